// Loadtest assesses a visit many times over a service on this machine, and
// prints how many a second, how long each took, and what memory the service had
// at each tenth of the way.
//
//	go run ./examples/service/loadtest                  10,000 assessments of each scope
//	go run ./examples/service/loadtest -n 1000000       a million with verdicts, and 10,000 whole
//	go run ./examples/service/loadtest -service http://127.0.0.1:8080
//
// Without -service it builds the service and starts it as a process of its own
// that computes on one core, and ends it at the end. It speaks to loopback
// addresses only, and stops each scope at its number of requests or after -time.
package main

import (
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
 "readings": {"suctionPressure": "118 psig", "suctionLine": "70 °F", "liquidPressure": "318 psig", "liquidLine": "96 °F",
  "outdoorDryBulb": "82 °F", "returnDryBulb": "75 °F", "returnWetBulb": "63 °F", "supplyDryBulb": "57 °F"}}`

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "loadtest:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("loadtest", flag.ContinueOnError)
	base := flags.String(
		"service",
		"",
		"where a service listens already, a loopback address; without it one is started",
	)
	verdicts := flags.Int("n", 10_000, "assessments of scope \"verdict\", at most 5000000")
	wholes := flags.Int(
		"whole",
		10_000,
		"assessments of scope \"whole\", with dose and diagnosis, at most 5000000",
	)
	clients := flags.Int("clients", 8, "requests under way at once, at most 256")
	limit := flags.Duration("time", time.Hour, "stop a scope after this long")
	if err := flags.Parse(args); err != nil {
		return err
	}
	for _, n := range []int{*verdicts, *wholes} {
		if n < 0 || n > 5_000_000 {
			return fmt.Errorf("-n and -whole are from 0 to 5000000")
		}
	}
	if *clients < 1 || *clients > 256 {
		return fmt.Errorf("-clients is from 1 to 256")
	}
	at := *base
	var pid int
	if at == "" {
		served, err := startService()
		if err != nil {
			return err
		}
		defer served.end()
		at, pid = served.address, served.cmd.Process.Pid
		// The service has a core to itself where there are two.
		runtime.GOMAXPROCS(max(1, runtime.NumCPU()-1))
	}
	if err := onLoopback(at); err != nil {
		return err
	}
	l := load{out: out, base: at, pid: pid, clients: *clients, limit: *limit}
	l.client = &http.Client{
		Timeout:   10 * time.Second,
		Transport: &http.Transport{MaxIdleConnsPerHost: *clients + 1},
	}
	var reports []report
	for _, scope := range []struct {
		name string
		n    int
	}{{"verdict", *verdicts}, {"whole", *wholes}} {
		if scope.n == 0 {
			continue
		}
		r, err := l.run(scope.name, scope.n)
		if err != nil {
			return err
		}
		reports = append(reports, r)
	}
	return printed(out, reports, *clients)
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
	out     io.Writer
	base    string
	pid     int // of the service, where it is a child
	client  *http.Client
	clients int
	limit   time.Duration
}

// A report is what became of one scope.
type report struct {
	scope           string
	requests        int
	elapsed         time.Duration
	p50, p99, p999  time.Duration
	longest         time.Duration
	refused, failed int64
}

func (l load) run(scope string, n int) (report, error) {
	body := fmt.Sprintf(visit, scope)
	took := make([]time.Duration, n)
	var next, refused, failed atomic.Int64
	fmt.Fprintf(
		l.out,
		"scope %s, %d requests\n%12s %10s %10s %10s %12s\n",
		scope,
		n,
		"requests",
		"seconds",
		"heap",
		"system",
		"resident",
	)
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
				status, err := l.once(body)
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
		scope,
		len(took),
		elapsed,
		at(0.5),
		at(0.99),
		at(0.999),
		took[len(took)-1],
		refused.Load(),
		failed.Load(),
	}, nil
}

func (l load) once(body string) (int, error) {
	resp, err := l.client.Post(l.base+"/v1/assess", "application/json", strings.NewReader(body))
	if err != nil {
		return 0, err
	}
	defer resp.Body.Close()
	_, err = io.Copy(io.Discard, resp.Body)
	return resp.StatusCode, err
}

func (l load) row(done int64, began time.Time) {
	heap, system := l.memory()
	fmt.Fprintf(
		l.out,
		"%12d %10.1f %10s %10s %12s\n",
		done,
		time.Since(began).Seconds(),
		heap,
		system,
		resident(l.pid),
	)
}

func printed(out io.Writer, reports []report, clients int) error {
	var failed int64
	fmt.Fprintf(
		out,
		"%d clients at once\n%-8s %10s %12s %10s %10s %10s %10s %8s %8s\n",
		clients,
		"scope",
		"requests",
		"per second",
		"p50",
		"p99",
		"p99.9",
		"longest",
		"refused",
		"failed",
	)
	for _, r := range reports {
		failed += r.failed
		fmt.Fprintf(
			out,
			"%-8s %10d %12.0f %10s %10s %10s %10s %8d %8d\n",
			r.scope,
			r.requests,
			float64(r.requests)/r.elapsed.Seconds(),
			milliseconds(
				r.p50,
			),
			milliseconds(r.p99),
			milliseconds(r.p999),
			milliseconds(r.longest),
			r.refused,
			r.failed,
		)
	}
	if failed > 0 {
		return fmt.Errorf("%d requests failed", failed)
	}
	return nil
}

func milliseconds(d time.Duration) string { return fmt.Sprintf("%.2f ms", 1000*d.Seconds()) }
