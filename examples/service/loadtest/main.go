// Loadtest assesses a visit many times over a service on this machine, and
// prints how many a second, how long each took, and what memory the service had
// at each tenth of the way.
//
//	go run ./examples/service/loadtest                  10,000 assessments of each scope
//	go run ./examples/service/loadtest -n 1000000       a million with verdicts, and 10,000 whole
//	go run ./examples/service/loadtest -slow 32         while 32 batches of blank lines hang on
//	go run ./examples/service/loadtest -rate 400        400 a second, answered or not
//	go run ./examples/service/loadtest -plain           answers as they are, not packed with gzip
//	go run ./examples/service/loadtest -lines 1000      in batches of so many
//	go run ./examples/service/loadtest \
//	    -service http://127.0.0.1:8080 -operations http://127.0.0.1:8081
//
// It prints what a request cost the service in time of a core, too, which another load of
// the machine changes least, and how long health took to answer meanwhile.
//
// Without -service it builds the service and starts it as a process of its own
// that computes on one core, and ends it at the end. It speaks to loopback
// addresses only, and stops each scope at its number of requests or after -time.
package main

import (
	"bufio"
	"bytes"
	"flag"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"os"
	"runtime"
	"slices"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// visit is invented.
const visit = `{"scope": %q, "units": "IP",
 "equipment": {"refrigerant": "R-410A", "metering": "fixed restrictor", "nominalCapacity": "3 ton"},
 "site": {"elevation": "6000 ft"},
 "readings": {"suctionPressure": "118 psig", "suctionLine": "70 °F",
  "liquidPressure": "318 psig", "liquidLine": "96 °F",
  "outdoorDryBulb": "82 °F", "returnDryBulb": "75 °F",
  "returnWetBulb": "63 °F", "supplyDryBulb": "57 °F"}}`

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "loadtest:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("loadtest", flag.ContinueOnError)
	base := flags.String(
		"service", "",
		"where a service listens already, a loopback address; without it one is started",
	)
	verdicts := flags.Int("n", 10_000, "assessments of scope \"verdict\", at most 5000000")
	wholes := flags.Int(
		"whole", 10_000, "assessments of scope \"whole\", with dose and diagnosis, at most 5000000",
	)
	clients := flags.Int("clients", 8, "requests under way at once, at most 256")
	operations := flags.String("operations", "",
		"where that service answers its operators; for its memory and health")
	slow := flags.Int("slow", 0, "batches that send blank lines all the time, at most 256")
	rate := flags.Float64("rate", 0, "requests to begin a second; 0 for as many as are answered")
	plain := flags.Bool("plain", false, "take answers as they are, not packed with gzip")
	lines := flags.Int("lines", 1, "visits in a request; more than one make it a batch")
	limit := flags.Duration("time", time.Hour, "stop a scope after this long")
	if err := flags.Parse(args); err != nil {
		return err
	}
	for _, n := range []int{*verdicts, *wholes} {
		if n < 0 || n > 5_000_000 {
			return fmt.Errorf("-n and -whole are from 0 to 5000000")
		}
	}
	if *lines < 1 || *lines > 100_000 {
		return fmt.Errorf("-lines is from 1 to 100000")
	}
	if *clients < 1 || *clients > 256 || *slow < 0 || *slow > 256 {
		return fmt.Errorf("-clients is from 1 to 256, -slow from 0 to 256")
	}
	at, own := *base, *operations
	var pid int
	if at == "" {
		served, err := startService()
		if err != nil {
			return err
		}
		defer served.end()
		at, own, pid = served.address, served.operations, served.cmd.Process.Pid
		// The service has a core to itself where there are two.
		runtime.GOMAXPROCS(max(1, runtime.NumCPU()-1))
	}
	for _, address := range []string{at, own} {
		if err := onLoopback(address); address != "" && err != nil {
			return err
		}
	}
	l := load{
		out: out, base: at, operations: own, pid: pid, clients: *clients, limit: *limit,
		rate: *rate, lines: *lines,
	}
	l.client = &http.Client{
		Timeout:   10*time.Second + time.Duration(*lines)*10*time.Millisecond,
		Transport: &http.Transport{MaxIdleConnsPerHost: *clients + 1, DisableCompression: *plain},
	}
	defer l.hangOn(*slow)()
	var reports []report
	for _, scope := range []struct {
		name string
		n    int
	}{{"verdict", *verdicts}, {"whole", *wholes}} {
		if scope.n == 0 {
			continue
		}
		r, err := l.run(scope.name, (scope.n+*lines-1) / *lines)
		if err != nil {
			return err
		}
		reports = append(reports, r)
	}
	return printed(out, reports, *clients, *lines)
}

func onLoopback(base string) error {
	u, err := url.Parse(base)
	if err != nil {
		return err
	}
	if ip := net.ParseIP(u.Hostname()); ip == nil || !ip.IsLoopback() {
		return fmt.Errorf("%s is not a loopback address; use 127.0.0.1 or [::1]", base)
	}
	return nil
}

// load asks for the same assessment over and over.
type load struct {
	out              io.Writer
	base, operations string
	pid              int // of the service, where it is a child
	client           *http.Client
	clients          int
	limit            time.Duration
	rate             float64
	lines            int // visits of one request
}

// A report is what became of one scope.
type report struct {
	scope           string
	requests        int
	elapsed         time.Duration
	p50, p99, p999  time.Duration
	longest         time.Duration
	refused, failed int64
	core            time.Duration // of the service, an assessment
	health          time.Duration // the longest that it took
}

func (l load) run(scope string, n int) (report, error) {
	path, media, body := "/v1/assess", "application/json", fmt.Sprintf(visit, scope)
	if l.lines > 1 {
		path, media = "/v1/assess/batch", "application/x-ndjson"
		body = strings.Repeat(strings.ReplaceAll(body, "\n", "")+"\n", l.lines)
	}
	took := make([]time.Duration, n)
	var next, refused, failed atomic.Int64
	fmt.Fprintf(
		l.out, "scope %s, %d requests\n%12s %10s %10s %10s %12s\n", scope, n, "requests", "seconds",
		"heap", "system", "resident",
	)
	health := l.watchHealth()
	core := coreTime(l.pid)
	began := time.Now()
	stop := began.Add(l.limit)
	step := int64(max(1, n/10))
	var all sync.WaitGroup
	for range l.clients {
		all.Go(func() {
			for {
				i := next.Add(1)
				if i > int64(n) || time.Now().After(stop) {
					return
				}
				if (i-1)%step == 0 {
					l.row(i-1, began)
				}
				start := time.Now()
				if l.rate > 0 {
					// It counts from when it was due, or a late answer would hide those it delays.
					start = began.Add(time.Duration(float64(i-1) / l.rate * float64(time.Second)))
					time.Sleep(time.Until(start))
				}
				status, err := l.once(path, media, body)
				took[i-1] = time.Since(start)
				switch {
				case err != nil:
					failed.Add(1)
				case status != http.StatusOK:
					refused.Add(1)
				}
			}
		})
	}
	all.Wait()
	elapsed := time.Since(began)
	took = slices.DeleteFunc(took, func(d time.Duration) bool { return d == 0 })
	if len(took) == 0 {
		return report{}, fmt.Errorf("no request was made")
	}
	l.row(int64(len(took)), began)
	fmt.Fprintln(l.out)
	slices.Sort(took)
	at := func(share float64) time.Duration { return took[int(share*float64(len(took)-1))] }
	return report{
		scope, len(took), elapsed, at(0.5), at(0.99), at(0.999), took[len(took)-1], refused.Load(),
		failed.Load(), (coreTime(l.pid) - core) / time.Duration(len(took)*l.lines), health(),
	}, nil
}

func (l load) once(path, media, body string) (int, error) {
	resp, err := l.client.Post(l.base+path, media, strings.NewReader(body))
	if err != nil {
		return 0, err
	}
	defer resp.Body.Close()
	if l.lines == 1 || resp.StatusCode != http.StatusOK {
		_, err = io.Copy(io.Discard, resp.Body)
		return resp.StatusCode, err
	}
	assessed := 0
	results := bufio.NewScanner(resp.Body)
	results.Buffer(nil, 1<<20)
	for results.Scan() {
		if bytes.Contains(results.Bytes(), []byte(`"assessment":`)) {
			assessed++
		}
	}
	if assessed < l.lines {
		return resp.StatusCode, fmt.Errorf("%d of %d visits assessed", assessed, l.lines)
	}
	return resp.StatusCode, results.Err()
}

func (l load) row(done int64, began time.Time) {
	heap, system := l.memory()
	fmt.Fprintf(
		l.out, "%12d %10.1f %10s %10s %12s\n", done, time.Since(began).Seconds(), heap, system,
		resident(l.pid),
	)
}

func printed(out io.Writer, reports []report, clients, lines int) error {
	var failed int64
	fmt.Fprintf(out, "%d clients at once, %d visits a request\n", clients, lines)
	fmt.Fprintf(out, "%-8s %10s %11s %10s %10s %10s %10s %10s %10s %8s %8s\n",
		"scope", "requests", "visits/s", "core each", "p50", "p99", "p99.9", "longest",
		"health", "refused", "failed")
	for _, r := range reports {
		failed += r.failed
		fmt.Fprintf(out, "%-8s %10d %11.0f %10s %10s %10s %10s %10s %10s %8d %8d\n", r.scope,
			r.requests, float64(r.requests*lines)/r.elapsed.Seconds(), milliseconds(r.core),
			milliseconds(r.p50), milliseconds(r.p99), milliseconds(r.p999), milliseconds(r.longest),
			milliseconds(r.health), r.refused, r.failed)
	}
	if failed > 0 {
		return fmt.Errorf("%d requests failed", failed)
	}
	return nil
}

func milliseconds(d time.Duration) string { return fmt.Sprintf("%.2f ms", 1000*d.Seconds()) }
