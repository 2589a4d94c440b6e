// Service offers satline over HTTP: JSON in, JSON out, no state.
//
//	go run ./examples/service -listen 127.0.0.1:8080
//
//	POST /v1/assess                    a visit; its assessment
//	POST /v1/assess/batch              visits, one a line (NDJSON); results, one a line
//	GET  /v1/refrigerants              every refrigerant known
//	GET  /v1/refrigerants/{name}       one of them
//	POST /v1/refrigerant/saturation    boiling and condensing, superheat and subcooling
//	POST /v1/refrigerant/state         everything at one state
//	POST /v1/air                       the state of moist air
//	POST /v1/charge/target             what superheat, subcooling or approach should be
//	GET  /problems/{kind}              what a kind of problem means
//	GET  /openapi.json                 the description of all this (OpenAPI 3.1)
//	GET  /healthz, /readyz             alive; ready for work
//	GET  /metrics                      counts and times, Prometheus text
//
// Errors are application/problem+json (RFC 9457).
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"os"
	"os/signal"
	"runtime"
	"syscall"
	"time"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second signal ends it at once
	err := run(ctx, os.Args[1:], slog.New(slog.NewJSONHandler(os.Stderr, nil)))
	if err != nil && !errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(os.Stderr, "service:", err)
		os.Exit(1)
	}
}

// run serves until ctx ends, then lets requests under way finish.
func run(ctx context.Context, args []string, log *slog.Logger) error {
	flags := flag.NewFlagSet("service", flag.ContinueOnError)
	listen := flags.String("listen", "127.0.0.1:8080", "address to listen on")
	connections := flags.Int(
		"connections",
		512,
		"connections open at once; more wait, and idle ones make room",
	)
	workers := flags.Int("workers", 4*runtime.GOMAXPROCS(0), "requests computed at once; more wait")
	drain := flags.Duration(
		"drain",
		0,
		"time between being told to stop and taking no more connections, in which readiness is withdrawn",
	)
	grace := flags.Duration("grace", 10*time.Second, "time for requests under way when stopping")
	quiet := flags.Bool("quiet", false, "log no requests, only starts, stops and failures")
	if err := flags.Parse(args); err != nil {
		return err
	}
	listener, err := net.Listen("tcp", *listen)
	if err != nil {
		return err
	}
	s := newService(log, *workers, !*quiet)
	server := newServer(s, log)
	limited := limitConnections(listener, *connections)
	server.ConnState = limited.state
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(limited) }()
	log.Info("listening", "address", listener.Addr().String())
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	s.ready.Store(false)
	log.Info("stopping", "drain", drain.String(), "grace", grace.String())
	time.Sleep(*drain)
	closing, cancel := context.WithTimeout(context.Background(), *grace)
	defer cancel()
	s.stop()
	limited.finish(closing)
	err = server.Shutdown(closing)
	if errors.Is(err, context.DeadlineExceeded) {
		log.Warn("cut off", "requests", s.metrics.underWay.Load())
		return server.Close()
	}
	return err
}

// newServer bounds how long and how much of a client is waited for. A batch
// sets deadlines of its own, line by line.
func newServer(s *service, log *slog.Logger) *http.Server {
	return &http.Server{
		Handler:           s,
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       20 * time.Second,
		WriteTimeout:      40 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
		ErrorLog:          slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}
}
