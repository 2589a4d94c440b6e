package main

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"
)

func TestLoopbackOnly(t *testing.T) {
	for _, to := range []string{"http://192.0.2.1:8080", "http://example.com",
		"http://0.0.0.0:8080", "::"} {
		if err := run([]string{"-service", to}, &strings.Builder{}); err == nil ||
			!strings.Contains(err.Error(), "loopback") && !strings.Contains(err.Error(), "parse") {
			t.Errorf("%s: %v", to, err)
		}
	}
}

func TestCountsAndReports(t *testing.T) {
	var asked atomic.Int64
	server := httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		switch r.URL.Path {
		case "/metrics":
			w.Write([]byte("satline_heap_bytes 2000000\nsatline_system_bytes 9000000\n"))
		case "/healthz":
		default:
			if asked.Add(1)%10 == 0 {
				w.WriteHeader(http.StatusServiceUnavailable)
			}
		}
	}))
	defer server.Close()
	var out strings.Builder
	if err := run([]string{"-service", server.URL, "-operations", server.URL, "-n", "100", "-whole",
		"0", "-clients", "3"}, &out); err != nil {
		t.Fatal(err)
	}
	if got := asked.Load(); got != 100 {
		t.Errorf("%d requests, want 100", got)
	}
	for _, want := range []string{"2.0 MB     9.0 MB", "verdict         100 "} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in\n%s", want, &out)
		}
	}
	last := strings.Fields(out.String())
	if got := strings.Join(last[len(last)-2:], " "); got != "10 0" {
		t.Errorf("refused and failed: %s, want 10 0", got)
	}
}

// Without an address the service is a process of its own, asked for both scopes.
func TestStartsTheService(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: building the service takes a while")
	}
	var out strings.Builder
	if err := run([]string{"-n", "50", "-whole", "20"}, &out); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"\nverdict          50 ", "\nwhole            20 "} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in\n%s", want, &out)
		}
	}
}
