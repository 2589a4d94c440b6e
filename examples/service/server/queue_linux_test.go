package server

import (
	"log/slog"
	"math/rand/v2"
	"net/http"
	"net/http/httptest"
	"runtime"
	"slices"
	"strings"
	"syscall"
	"testing"

	"github.com/satline/satline/examples/service/api"
)

// How long 99 % of answers take at the most, waiting for those before them, where requests come
// at four fifths of what one core can answer, evenly or at random. It goes by the time that this
// process has had of a core, with what it collects in between, so that other programs on the
// machine do not count; the network does not either.
//
//	go test -run '^$' -bench Queue -benchtime 20000x ./examples/service/server
func BenchmarkQueue(b *testing.B) {
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	const load = 0.8
	s := newService(slog.New(slog.DiscardHandler), usual())
	for _, scope := range []string{"verdict", "whole"} {
		body := `{"scope": "` + scope + `",` + api.ExampleVisit[1:]
		b.Run(scope, func(b *testing.B) {
			ask := func() {
				w := httptest.NewRecorder()
				r := httptest.NewRequest("POST", "/v1/assess", strings.NewReader(body))
				r.Header.Set("Content-Type", api.JSON)
				r.Header.Set("Accept-Encoding", "gzip")
				s.ServeHTTP(w, r)
				if w.Code != http.StatusOK {
					b.Fatal(w.Code, w.Body)
				}
				runtime.Gosched()
			}
			for range 3000 { // the first second of a process is a slow one
				ask()
			}
			var took []float64 // ms
			sum, before := 0.0, coreTime()
			for b.Loop() {
				ask()
				now := coreTime()
				took = append(took, now-before)
				sum += now - before
				before = now
			}
			every := sum / float64(len(took)) / load
			b.ReportMetric(1000/every, "begun/s")
			b.ReportMetric(p99(took, func() float64 { return every }), "even-p99-ms")
			random := rand.New(rand.NewPCG(1, 2))
			b.ReportMetric(
				p99(took, func() float64 { return every * random.ExpFloat64() }), "random-p99-ms",
			)
		})
	}
}

// p99 is the time within which 99 % are answered, of which each takes so long alone and comes so
// long after the one before.
func p99(alone []float64, after func() float64) float64 {
	var took []float64
	wait := 0.0
	for _, t := range alone {
		took = append(took, wait+t)
		wait = max(0, wait+t-after())
	}
	slices.Sort(took)
	return took[len(took)*99/100]
}

// coreTime is the time that this process has had of a core, in ms.
func coreTime() float64 {
	var used syscall.Rusage
	syscall.Getrusage(syscall.RUSAGE_SELF, &used)
	return float64(used.Utime.Nano()+used.Stime.Nano()) / 1e6
}
