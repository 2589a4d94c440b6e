// Service-telemetry is examples/service with OpenTelemetry: a span and the usual metrics
// for each request, sent by OTLP over HTTP.
//
//	OTEL_EXPORTER_OTLP_ENDPOINT=http://127.0.0.1:4318 go -C examples/service-telemetry run .
//
// The flags are those of the service; where to send, how often and by what name is said in
// the variables OTEL_* of the OpenTelemetry specification.
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
	"time"

	"go.opentelemetry.io/otel/exporters/otlp/otlpmetric/otlpmetrichttp"
	"go.opentelemetry.io/otel/exporters/otlp/otlptrace/otlptracehttp"
	"go.opentelemetry.io/otel/sdk/metric"
	"go.opentelemetry.io/otel/sdk/resource"
	"go.opentelemetry.io/otel/sdk/trace"
	semconv "go.opentelemetry.io/otel/semconv/v1.34.0"

	"github.com/satline/satline/examples/service/server"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	context.AfterFunc(ctx, stop) // a second signal ends it at once
	log := slog.New(slog.NewJSONHandler(os.Stderr, nil))
	if err := run(ctx, os.Args[1:], log); err != nil && !errors.Is(err, flag.ErrHelp) {
		fmt.Fprintln(os.Stderr, "service-telemetry:", err)
		os.Exit(1)
	}
}

func run(ctx context.Context, args []string, log *slog.Logger) (err error) {
	spans, err := otlptracehttp.New(ctx)
	if err != nil {
		return err
	}
	counts, err := otlpmetrichttp.New(ctx)
	if err != nil {
		return err
	}
	// What OTEL_SERVICE_NAME and OTEL_RESOURCE_ATTRIBUTES say comes last and outranks.
	self, err := resource.New(ctx, resource.WithAttributes(semconv.ServiceName("satline")),
		resource.WithTelemetrySDK(), resource.WithFromEnv())
	if err != nil {
		return err
	}
	traces := trace.NewTracerProvider(trace.WithBatcher(spans), trace.WithResource(self))
	meters := metric.NewMeterProvider(
		metric.WithReader(metric.NewPeriodicReader(counts)), metric.WithResource(self))
	defer func() {
		flush, cancel := context.WithTimeout(context.Background(), 5*time.Second)
		defer cancel()
		if lost := errors.Join(traces.Shutdown(flush), meters.Shutdown(flush)); lost != nil {
			log.Warn("telemetry not sent", "cause", lost)
		}
	}()
	return server.Run(ctx, server.Options{
		Args: args, Getenv: os.Getenv, Log: log, Wrap: observed(traces, meters),
	})
}
