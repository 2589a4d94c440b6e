package main

import (
	"net/http"
	"net/http/httptest"
	"strings"
	"sync/atomic"
	"testing"
)

func TestLoopbackOnly(t *testing.T) {
	for _, to := range []string{"http://192.0.2.1:8080", "http://example.com", "http://0.0.0.0:8080", "::"} {
		if err := run([]string{"-service", to}, &strings.Builder{}); err == nil || !strings.Contains(err.Error(), "loopback") && !strings.Contains(err.Error(), "parse") {
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
		default:
			if asked.Add(1)%10 == 0 {
				w.WriteHeader(http.StatusServiceUnavailable)
			}
		}
	}))
	defer server.Close()
	var out strings.Builder
	if err := run([]string{"-service", server.URL, "-n", "100", "-clients", "3"}, &out); err != nil {
		t.Fatal(err)
	}
	if got := asked.Load(); got != 100 {
		t.Errorf("%d requests, want 100", got)
	}
	for _, want := range []string{"2.0 MB heap, 9.0 MB system", "10 refused, 0 failed"} {
		if !strings.Contains(out.String(), want) {
			t.Errorf("no %q in\n%s", want, &out)
		}
	}
}
