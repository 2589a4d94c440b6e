package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"time"
)

// A served service is a process of its own.
type served struct {
	cmd                 *exec.Cmd
	dir                 string
	address, operations string
}

// startService builds the service and starts it on a free loopback port and one
// core.
func startService() (*served, error) {
	dir, err := os.MkdirTemp("", "satline-loadtest")
	if err != nil {
		return nil, err
	}
	s := &served{dir: dir}
	program := filepath.Join(dir, "service.exe")
	build := exec.Command("go", "build", "-o", program,
		"github.com/satline/satline/examples/service")
	if text, err := build.CombinedOutput(); err != nil {
		s.end()
		return nil, fmt.Errorf("%w: %s", err, text)
	}
	s.cmd = exec.Command(
		program, "-listen", "127.0.0.1:0", "-operations", "127.0.0.1:0",
		"-client-requests", "1000", "-client-connections", "512", "-quiet",
	)
	s.cmd.Env = append(os.Environ(), "GOMAXPROCS=1")
	log, err := s.cmd.StderrPipe()
	if err == nil {
		err = s.cmd.Start()
	}
	if err != nil {
		s.cmd = nil
		s.end()
		return nil, err
	}
	lines := bufio.NewReader(log)
	first, err := lines.ReadBytes('\n')
	var listening struct{ Address, Operations string }
	if err == nil {
		err = json.Unmarshal(first, &listening)
	}
	if err != nil || listening.Address == "" {
		s.end()
		return nil, fmt.Errorf("the service did not start: %s %v", first, err)
	}
	go io.Copy(os.Stderr, lines)
	s.address, s.operations = "http://"+listening.Address, "http://"+listening.Operations
	return s, nil
}

func (s *served) end() {
	if s.cmd != nil {
		if s.cmd.Process.Signal(os.Interrupt) != nil {
			s.cmd.Process.Kill() // Windows has no such signal
		}
		kill := time.AfterFunc(15*time.Second, func() { s.cmd.Process.Kill() })
		s.cmd.Wait()
		kill.Stop()
	}
	os.RemoveAll(s.dir)
}
