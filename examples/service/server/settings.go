package server

import (
	"flag"
	"fmt"
	"runtime"
	"strings"
	"time"
)

// settings are what an operator may choose.
type settings struct {
	listen, operations  string
	connections         int
	clientConnections   int
	clientRequests      int
	clientHeader        string
	workers, batches    int
	batchTime, lineTime time.Duration
	drain, grace        time.Duration
	origins             string
	quiet               bool
}

// usual are the settings of whoever says nothing.
func usual() settings {
	return settings{
		listen: "127.0.0.1:8080", operations: "127.0.0.1:8081",
		connections: 512, clientConnections: 128, clientRequests: 64,
		workers: 4 * runtime.GOMAXPROCS(0), batches: 64,
		batchTime: 15 * time.Minute, lineTime: 15 * time.Second, grace: 10 * time.Second,
	}
}

// read reads flags, and for those that are not given the environment: -client-header
// is SATLINE_CLIENT_HEADER.
func (s *settings) read(args []string, getenv func(string) string) error {
	f := flag.NewFlagSet("service", flag.ContinueOnError)
	f.StringVar(&s.listen, "listen", s.listen, "address to listen on")
	f.StringVar(&s.operations, "operations", s.operations,
		"address of health, readiness, metrics and profiles, for operators alone; empty for none")
	f.IntVar(&s.connections, "connections", s.connections,
		"connections open at once; more wait, and idle ones make room")
	f.IntVar(&s.clientConnections, "client-connections", s.clientConnections,
		"connections of one address open at once; more are closed; not with -client-header")
	f.IntVar(&s.clientRequests, "client-requests", s.clientRequests,
		"requests of one client under way at once; more are answered 429")
	f.StringVar(&s.clientHeader, "client-header", "",
		"the header in which your proxy says who the client is; without it, its address does")
	f.IntVar(&s.workers, "workers", s.workers, "requests computed at once; more wait")
	f.IntVar(&s.batches, "batches", s.batches, "batches under way at once; more are answered 503")
	f.DurationVar(&s.batchTime, "batch-time", s.batchTime, "the longest that a batch may take")
	f.DurationVar(&s.lineTime, "line-time", s.lineTime,
		"the longest that a batch waits for its next visit, blank lines or not")
	f.DurationVar(&s.drain, "drain", 0,
		"time between being told to stop and taking no more connections, in which readiness "+
			"is withdrawn")
	f.DurationVar(&s.grace, "grace", s.grace,
		"time for requests under way when stopping, and for the client of a batch that was ended "+
			"while it was sending to read its results")
	f.StringVar(&s.origins, "origins", "",
		"origins whose pages may ask (CORS), with commas between; * for any")
	f.BoolVar(&s.quiet, "quiet", false, "log no requests, only starts, stops and failures")
	if err := f.Parse(args); err != nil {
		return err
	}
	if f.NArg() > 0 {
		return fmt.Errorf("%q is no flag, and nothing but flags is taken; see -help", f.Arg(0))
	}
	given := map[string]bool{}
	f.Visit(func(one *flag.Flag) { given[one.Name] = true })
	var problem error
	f.VisitAll(func(one *flag.Flag) {
		name := "SATLINE_" + strings.ToUpper(strings.ReplaceAll(one.Name, "-", "_"))
		if value := getenv(name); value != "" && !given[one.Name] && problem == nil {
			if err := one.Value.Set(value); err != nil {
				problem = fmt.Errorf("%s=%q: %w; %s", name, value, err, one.Usage)
			}
		}
	})
	if problem != nil {
		return problem
	}
	for name, n := range map[string]int{
		"connections": s.connections, "client-connections": s.clientConnections,
		"client-requests": s.clientRequests, "workers": s.workers, "batches": s.batches,
	} {
		if n < 1 {
			return fmt.Errorf("-%s is %d; it is 1 or more", name, n)
		}
	}
	for name, d := range map[string]time.Duration{
		"batch-time": s.batchTime, "line-time": s.lineTime,
	} {
		if d <= 0 {
			return fmt.Errorf("-%s is %v; it is more than 0s", name, d)
		}
	}
	return nil
}
