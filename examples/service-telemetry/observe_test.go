package main

import (
	"bufio"
	"context"
	"encoding/json"
	"io"
	"log/slog"
	"net/http"
	"strings"
	"testing"

	sdkmetric "go.opentelemetry.io/otel/sdk/metric"
	"go.opentelemetry.io/otel/sdk/metric/metricdata"
	sdktrace "go.opentelemetry.io/otel/sdk/trace"
	"go.opentelemetry.io/otel/sdk/trace/tracetest"

	"github.com/satline/satline/examples/service/server"
)

// A request that belongs to a trace has its span in it, by the name of the endpoint, and
// the service logs that span; the metrics count it.
func TestARequestIsObserved(t *testing.T) {
	spans := tracetest.NewSpanRecorder()
	traces := sdktrace.NewTracerProvider(sdktrace.WithSpanProcessor(spans))
	reader := sdkmetric.NewManualReader()
	meters := sdkmetric.NewMeterProvider(sdkmetric.WithReader(reader))

	out, in := io.Pipe()
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 1)
	go func() {
		ended <- server.Run(ctx, server.Options{
			Args:   []string{"-listen", "127.0.0.1:0", "-operations", "127.0.0.1:0"},
			Getenv: func(string) string { return "" },
			Log:    slog.New(slog.NewJSONHandler(in, nil)),
			Wrap:   observed(traces, meters),
		})
		in.Close()
	}()
	lines := bufio.NewScanner(out)
	var listening struct{ Address string }
	if !lines.Scan() || json.Unmarshal(lines.Bytes(), &listening) != nil {
		t.Fatalf("%s %v", lines.Bytes(), lines.Err())
	}

	// The example of W3C Trace Context, section 3.2.
	const trace, parent = "4bf92f3577b34da6a3ce929d0e0e4736", "00f067aa0ba902b7"
	r, err := http.NewRequest("GET", "http://"+listening.Address+"/v1/refrigerants/R-32", nil)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("traceparent", "00-"+trace+"-"+parent+"-01")
	go func() {
		if resp, err := http.DefaultClient.Do(r); err == nil {
			resp.Body.Close()
		}
	}()
	if !lines.Scan() {
		t.Fatal(lines.Err())
	}
	logged := lines.Text()
	go io.Copy(io.Discard, out)
	stop()
	if err := <-ended; err != nil {
		t.Error(err)
	}

	if len(spans.Ended()) != 1 {
		t.Fatalf("%d spans", len(spans.Ended()))
	}
	span := spans.Ended()[0]
	if span.Name() != "GET /v1/refrigerants/{name}" ||
		span.SpanContext().TraceID().String() != trace ||
		span.Parent().SpanID().String() != parent {
		t.Errorf("%s %v %v", span.Name(), span.SpanContext(), span.Parent())
	}
	own := span.SpanContext().SpanID().String()
	if !strings.Contains(logged, trace) || !strings.Contains(logged, own) {
		t.Errorf("the log has neither %s nor %s: %s", trace, own, logged)
	}
	var have metricdata.ResourceMetrics
	if err := reader.Collect(t.Context(), &have); err != nil {
		t.Fatal(err)
	}
	counted := uint64(0)
	for _, scope := range have.ScopeMetrics {
		for _, m := range scope.Metrics {
			h, ok := m.Data.(metricdata.Histogram[float64])
			if ok && m.Name == "http.server.request.duration" {
				for _, point := range h.DataPoints {
					route, _ := point.Attributes.Value("http.route")
					if route.AsString() == "/v1/refrigerants/{name}" {
						counted += point.Count
					}
				}
			}
		}
	}
	if counted != 1 {
		t.Errorf("counted %d times in %+v", counted, have)
	}
}
