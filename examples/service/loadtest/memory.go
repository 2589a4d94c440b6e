package main

import (
	"bufio"
	"fmt"
	"os"
	"strconv"
	"strings"
	"time"
)

// memory is what the service says of itself: its heap, and what it has taken
// from the system.
func (l load) memory() (heap, system string) {
	heap, system = "?", "?"
	resp, err := l.client.Get(l.operations + "/metrics")
	if err != nil {
		return heap, system
	}
	defer resp.Body.Close()
	lines := bufio.NewScanner(resp.Body)
	for lines.Scan() {
		name, value, _ := strings.Cut(lines.Text(), " ")
		bytes, err := strconv.ParseFloat(value, 64)
		switch {
		case err != nil:
		case name == "satline_heap_bytes":
			heap = megabytes(bytes)
		case name == "satline_system_bytes":
			system = megabytes(bytes)
		}
	}
	return heap, system
}

// resident is what the system holds in memory of a process, where it says so.
func resident(pid int) string {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if pid == 0 || err != nil {
		return "?"
	}
	_, after, _ := strings.Cut(string(text), "VmRSS:")
	field, _, _ := strings.Cut(strings.TrimSpace(after), " ")
	kib, err := strconv.ParseFloat(field, 64)
	if err != nil {
		return "?"
	}
	return megabytes(1024 * kib)
}

// coreTime is the time that a process has had of a core, where the system says so.
func coreTime(pid int) time.Duration {
	text, err := os.ReadFile(fmt.Sprintf("/proc/%d/stat", pid))
	if pid == 0 || err != nil {
		return 0
	}
	_, after, _ := strings.Cut(string(text), ") ")
	fields := strings.Fields(after) // from the third on: proc_pid_stat(5)
	if len(fields) < 13 {
		return 0
	}
	const tick = 10 * time.Millisecond // a hundredth of a second on every Linux that Go runs on
	var ticks int
	for _, f := range fields[11:13] {
		n, err := strconv.Atoi(f)
		if err != nil {
			return 0
		}
		ticks += n
	}
	return time.Duration(ticks) * tick
}

func megabytes(bytes float64) string { return fmt.Sprintf("%.1f MB", bytes/1e6) }
