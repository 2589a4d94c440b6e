// Service offers satline over HTTP: JSON in, JSON out, no state.
//
//	go run ./examples/service -listen 127.0.0.1:8080 -operations 127.0.0.1:8081
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
//
// On the listener of -operations, which no client reaches:
//
//	GET  /healthz, /readyz             alive; ready for work
//	GET  /metrics                      counts and times, Prometheus text
//	GET  /debug/pprof/                 profiles of net/http/pprof
//
// Errors are application/problem+json (RFC 9457). Every flag may be given in the
// environment too: SATLINE_LISTEN is -listen; a flag outranks it.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"log/slog"
	"os"
	"os/signal"
	"syscall"

	"github.com/satline/satline/examples/service/server"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second signal ends it at once
	err := server.Run(ctx, server.Options{
		Args: os.Args[1:], Getenv: os.Getenv, Log: slog.New(slog.NewJSONHandler(os.Stderr, nil)),
	})
	if err != nil && !errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(os.Stderr, "service:", err)
		os.Exit(1)
	}
}
