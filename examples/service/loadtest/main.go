// Loadtest asks a service on this machine to assess a visit many times over,
// and reports how many a second, how long each took, and what memory the
// service had at each tenth of the way.
//
//	GOMAXPROCS=1 go run ./examples/service -quiet &
//	go run ./examples/service/loadtest -n 100000
//
// It speaks to loopback addresses only, and stops at -n requests or after -time.
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
	"slices"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"
)

// visit is invented.
const visit = `{"scope": %q, "units": "IP",
 "equipment": {"refrigerant": "R-410A", "metering": "fixed restrictor", "nominalCapacity": "3 ton"},
 "site": {"elevation": "6000 ft"},
 "readings": {"suctionPressure": "118 psig", "suctionLine": "70 °F", "liquidPressure": "318 psig", "liquidLine": "92 °F",
  "outdoorDryBulb": "82 °F", "returnDryBulb": "75 °F", "returnWetBulb": "63 °F", "supplyDryBulb": "57 °F"}}`

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "loadtest:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	flags := flag.NewFlagSet("loadtest", flag.ContinueOnError)
	base := flags.String("service", "http://127.0.0.1:8080", "where the service listens; a loopback address")
	n := flags.Int("n", 10_000, "requests in all, at most 5000000")
	clients := flags.Int("clients", 8, "requests under way at once, at most 256")
	limit := flags.Duration("time", 5*time.Minute, "stop after this long")
	scope := flags.String("scope", "verdict", "scope of the assessments: verdict or whole")
	if err := flags.Parse(args); err != nil {
		return err
	}
	if *n < 1 || *n > 5_000_000 || *clients < 1 || *clients > 256 {
		return fmt.Errorf("-n is from 1 to 5000000 and -clients from 1 to 256")
	}
	if err := onLoopback(*base); err != nil {
		return err
	}
	return load(out, *base, fmt.Sprintf(visit, *scope), *n, *clients, *limit)
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

func load(out io.Writer, base, body string, n, clients int, limit time.Duration) error {
	client := &http.Client{Timeout: 10 * time.Second, Transport: &http.Transport{MaxIdleConnsPerHost: clients}}
	took := make([]time.Duration, n)
	var next, refused, failed atomic.Int64
	began := time.Now()
	stop := began.Add(limit)
	var all sync.WaitGroup
	for range clients {
		all.Go(func() {
			for {
				i := next.Add(1)
				if i > int64(n) || time.Now().After(stop) {
					return
				}
				if tenth := int64(max(1, n/10)); i%tenth == 1 || tenth == 1 {
					fmt.Fprintf(out, "%9d requests, %7.1f s: service holds %s\n", i-1, time.Since(began).Seconds(), memory(client, base))
				}
				start := time.Now()
				status, err := once(client, base+"/v1/assess", body)
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
		return fmt.Errorf("no request was made")
	}
	slices.Sort(took)
	at := func(share float64) time.Duration { return took[int(share*float64(len(took)-1))] }
	fmt.Fprintf(out, "%9d requests, %7.1f s: service holds %s\n", len(took), elapsed.Seconds(), memory(client, base))
	fmt.Fprintf(out, "%.0f requests a second with %d at once; p50 %v, p99 %v, p99.9 %v, longest %v; %d refused, %d failed\n",
		float64(len(took))/elapsed.Seconds(), clients, at(0.5), at(0.99), at(0.999), took[len(took)-1], refused.Load(), failed.Load())
	if failed.Load() > 0 {
		return fmt.Errorf("%d requests failed", failed.Load())
	}
	return nil
}

func once(client *http.Client, to, body string) (int, error) {
	resp, err := client.Post(to, "application/json", strings.NewReader(body))
	if err != nil {
		return 0, err
	}
	defer resp.Body.Close()
	_, err = io.Copy(io.Discard, resp.Body)
	return resp.StatusCode, err
}

// memory reads what the service says of itself.
func memory(client *http.Client, base string) string {
	resp, err := client.Get(base + "/metrics")
	if err != nil {
		return err.Error()
	}
	defer resp.Body.Close()
	text, err := io.ReadAll(resp.Body)
	if err != nil {
		return err.Error()
	}
	var shown []string
	lines := bufio.NewScanner(bytes.NewReader(text))
	for lines.Scan() {
		name, value, _ := strings.Cut(lines.Text(), " ")
		bytes, err := strconv.ParseFloat(value, 64)
		if err == nil && (name == "satline_heap_bytes" || name == "satline_system_bytes") {
			shown = append(shown, fmt.Sprintf("%.1f MB %s", bytes/1e6, strings.TrimSuffix(strings.TrimPrefix(name, "satline_"), "_bytes")))
		}
	}
	return strings.Join(shown, ", ")
}
