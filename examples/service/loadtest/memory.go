package main

import (
	"bufio"
	"fmt"
	"os"
	"strconv"
	"strings"
)

// memory is what the service says of itself: its heap, and what it has taken
// from the system.
func (l load) memory() (heap, system string) {
	heap, system = "?", "?"
	resp, err := l.client.Get(l.base + "/metrics")
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

func megabytes(bytes float64) string { return fmt.Sprintf("%.1f MB", bytes/1e6) }
