package main

import (
	"context"
	"encoding/json"
	"log/slog"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/examples/service/server"
)

// The options that the container and the systemd unit give are options of the
// service.
func TestDeploymentStarts(t *testing.T) {
	after := func(file, word string) string {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for line := range strings.Lines(string(text)) {
			if rest, ok := strings.CutPrefix(line, word); ok {
				return strings.TrimSpace(rest)
			}
		}
		t.Fatalf("%s has no %s", file, word)
		return ""
	}
	var container []string
	if err := json.Unmarshal([]byte(after("Dockerfile", "ENTRYPOINT ")), &container); err != nil {
		t.Fatal(err)
	}
	for _, words := range [][]string{container,
		strings.Fields(after("satline.service", "ExecStart="))} {
		args := words[1:]
		for _, name := range []string{"-listen", "-operations"} {
			at := slices.Index(args, name) + 1
			if at == 0 || at == len(args) {
				t.Fatalf("%q has no %s", words, name)
			}
			args[at] = "127.0.0.1:0"
		}
		stopped, stop := context.WithCancel(t.Context())
		stop()
		if err := server.Run(stopped, server.Options{
			Args: append(args, "-drain", "0s"), Log: slog.New(slog.DiscardHandler),
			Getenv: func(string) string { return "" },
		}); err != nil {
			t.Errorf("%q: %v", words, err)
		}
	}
}
