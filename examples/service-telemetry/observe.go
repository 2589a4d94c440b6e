package main

import (
	"net/http"

	"go.opentelemetry.io/contrib/instrumentation/net/http/otelhttp"
	"go.opentelemetry.io/otel/metric"
	"go.opentelemetry.io/otel/propagation"
	"go.opentelemetry.io/otel/trace"
)

// observed puts a span and the metrics of the semantic conventions for HTTP about each
// request. The span has the name of the endpoint, and the log of the service its trace.
func observed(
	traces trace.TracerProvider, meters metric.MeterProvider,
) func(http.Handler) http.Handler {
	context := propagation.TraceContext{}
	return func(service http.Handler) http.Handler {
		inner := func(w http.ResponseWriter, r *http.Request) {
			context.Inject(r.Context(), propagation.HeaderCarrier(r.Header))
			service.ServeHTTP(w, r)
		}
		return otelhttp.NewHandler(http.HandlerFunc(inner), "satline",
			otelhttp.WithTracerProvider(traces), otelhttp.WithMeterProvider(meters),
			otelhttp.WithPropagators(context))
	}
}
