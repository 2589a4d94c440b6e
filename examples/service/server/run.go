// Package server is the service of examples/service, to be started as it is or within
// what else a program has to add: telemetry, sign-in.
package server

import (
	"context"
	"errors"
	"log/slog"
	"net"
	"net/http"
	"runtime/debug"
	"time"
)

// Options are what a program gives the service.
type Options struct {
	// Args are flags, and Getenv has what is asked of the environment.
	Args   []string
	Getenv func(string) string
	Log    *slog.Logger
	// Wrap, where there is one, puts something before the handler of /v1 and the rest
	// that clients reach.
	Wrap func(http.Handler) http.Handler
}

// garbage is what may gather before it is collected, in per cent of what is in use, where the
// environment has no GOGC: what a service keeps is small beside what an answer needs, so that
// Go's 100 would collect after every two hundred of them.
const garbage = 400

// Run serves until ctx ends, then lets requests under way finish.
func Run(ctx context.Context, o Options) error {
	set := usual()
	if err := set.read(o.Args, o.Getenv); err != nil {
		return err
	}
	if o.Getenv("GOGC") == "" {
		debug.SetGCPercent(garbage)
	}
	log := o.Log.With("version", version)
	listener, err := net.Listen("tcp", set.listen)
	if err != nil {
		return err
	}
	defer listener.Close()
	s := newService(log, set)
	at := ""
	if set.operations != "" {
		own, err := net.Listen("tcp", set.operations)
		if err != nil {
			return err
		}
		at = own.Addr().String()
		operations := newServer(s.operations(), log)
		operations.WriteTimeout = 10 * time.Minute // a profile takes as long as it is asked for
		go operations.Serve(own)
		defer operations.Close()
	}
	var handler http.Handler = s
	if o.Wrap != nil {
		handler = o.Wrap(s)
	}
	server := newServer(handler, log)
	limited := limitConnections(listener, set)
	failed := make(chan error, 1)
	go func() { failed <- limited.serve(server) }()
	log.Info("listening", "address", listener.Addr().String(), "operations", at)
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	s.ready.Store(false)
	log.Info("stopping", "drain", set.drain.String(), "grace", set.grace.String())
	time.Sleep(set.drain)
	closing, cancel := context.WithTimeout(context.Background(), set.grace)
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
func newServer(h http.Handler, log *slog.Logger) *http.Server {
	return &http.Server{
		Handler:           h,
		ReadHeaderTimeout: 5 * time.Second,
		ReadTimeout:       20 * time.Second,
		WriteTimeout:      40 * time.Second,
		IdleTimeout:       2 * time.Minute,
		MaxHeaderBytes:    16 << 10,
		ErrorLog:          slog.NewLogLogger(log.Handler(), slog.LevelWarn),
	}
}
