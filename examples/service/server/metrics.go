package server

import (
	"cmp"
	"fmt"
	"io"
	"maps"
	"runtime"
	"slices"
	"sync"
	"sync/atomic"
	"time"

	"github.com/satline/satline/examples/service/api"
)

// bounds are the upper ends of the buckets of a duration, in seconds.
var bounds = []float64{
	0.0001, 0.00025, 0.0005, 0.001, 0.0025, 0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 5,
}

// metrics counts requests by endpoint and status, and how long they took.
type metrics struct {
	counters         []*counter
	underWay         atomic.Int64
	assessed, unable atomic.Int64 // lines of batches
}

type counter struct {
	pattern string

	mu      sync.Mutex
	status  map[int]int64
	buckets []int64
	seconds float64
	total   int64
}

func (m *metrics) add(pattern string) *counter {
	c := &counter{pattern: pattern, status: map[int]int64{}, buckets: make([]int64, len(bounds))}
	m.counters = append(m.counters, c)
	return c
}

func (m *metrics) line(r api.BatchResult) {
	if r.Problem != nil {
		m.unable.Add(1)
	} else {
		m.assessed.Add(1)
	}
}

func (c *counter) count(status int, took time.Duration) {
	s := took.Seconds()
	c.mu.Lock()
	defer c.mu.Unlock()
	c.status[status]++
	c.total++
	c.seconds += s
	for i, b := range bounds {
		if s <= b {
			c.buckets[i]++
		}
	}
}

// write prints the counters in the Prometheus text format, version 0.0.4.
func (m *metrics) write(w io.Writer) {
	family(w, "satline_requests_total", "counter", "Requests answered.")
	for _, c := range m.counters {
		c.mu.Lock()
		for _, s := range slices.SortedFunc(maps.Keys(c.status), cmp.Compare[int]) {
			fmt.Fprintf(
				w, "satline_requests_total{endpoint=%q,status=\"%d\"} %d\n", c.pattern, s,
				c.status[s],
			)
		}
		c.mu.Unlock()
	}
	family(
		w, "satline_request_seconds", "histogram",
		"Time from the end of the header of a request to the end of its answer.",
	)
	for _, c := range m.counters {
		c.mu.Lock()
		for i, b := range bounds {
			fmt.Fprintf(
				w, "satline_request_seconds_bucket{endpoint=%q,le=\"%g\"} %d\n", c.pattern, b,
				c.buckets[i],
			)
		}
		fmt.Fprintf(
			w, "satline_request_seconds_bucket{endpoint=%q,le=\"+Inf\"} %d\n", c.pattern, c.total,
		)
		fmt.Fprintf(w, "satline_request_seconds_sum{endpoint=%q} %g\n", c.pattern, c.seconds)
		fmt.Fprintf(w, "satline_request_seconds_count{endpoint=%q} %d\n", c.pattern, c.total)
		c.mu.Unlock()
	}
	family(w, "satline_batch_lines_total", "counter", "Lines of batches answered.")
	fmt.Fprintf(w, "satline_batch_lines_total{result=\"assessment\"} %d\n", m.assessed.Load())
	fmt.Fprintf(w, "satline_batch_lines_total{result=\"problem\"} %d\n", m.unable.Load())
	family(w, "satline_build_info", "gauge", "The version that runs.")
	fmt.Fprintf(w, "satline_build_info{version=%q,go=%q} 1\n", version, runtime.Version())
	var memory runtime.MemStats
	runtime.ReadMemStats(&memory)
	gauge(
		w, "satline_requests_under_way", "Requests that have not been answered yet.",
		m.underWay.Load(),
	)
	gauge(w, "satline_heap_bytes", "Heap in use.", int64(memory.HeapInuse))
	gauge(
		w, "satline_system_bytes", "Memory taken from the system.",
		int64(memory.Sys-memory.HeapReleased),
	)
	gauge(w, "satline_goroutines", "Goroutines.", int64(runtime.NumGoroutine()))
}

func family(w io.Writer, name, kind, help string) {
	fmt.Fprintf(w, "# HELP %s %s\n# TYPE %s %s\n", name, help, name, kind)
}

func gauge(w io.Writer, name, help string, v int64) {
	family(w, name, "gauge", help)
	fmt.Fprintf(w, "%s %d\n", name, v)
}
