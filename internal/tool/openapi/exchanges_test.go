package openapi

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/internal/tool/jsonschema"
)

// published is openapi.json as a client reads it.
type published struct {
	Paths      map[string]map[string]publishedOperation
	Components struct{ Schemas jsonschema.Properties }
}

type publishedOperation struct {
	RequestBody struct{ Content map[string]publishedContent }
	Responses   map[string]struct{ Content map[string]publishedContent }
}

type publishedContent struct{ Schema *jsonschema.Schema }

// operationAt finds what the description says of a request.
func (d published) operationAt(method, path string) (publishedOperation, bool) {
	for p := range d.Paths {
		if head, _, ok := strings.Cut(p, "{"); ok && strings.HasPrefix(path, head) {
			path = p
		}
	}
	o, ok := d.Paths[path][strings.ToLower(method)]
	return o, ok
}

// An exchange is a request and its answer, as the tests of the service write them.
type exchange struct {
	Method, Path, Media, Body, Kind string
	Status                          int
	Answer                          string
}

// Everything that the service's tests send and get is as openapi.json has it. The
// tests write it down where SATLINE_EXCHANGES names a file; those of the clients that
// misbehave have nothing to write.
func TestExchanges(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: it runs the tests of the service")
	}
	log := filepath.Join(t.TempDir(), "exchanges")
	const misbehaving = "Client|Slow|Connection|BatchIs|Stop"
	cmd := exec.Command(
		"go", "test", "-count=1", "-skip", misbehaving, "../../../examples/service/server",
	)
	cmd.Env = append(os.Environ(), "SATLINE_EXCHANGES="+log)
	if out, err := cmd.CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, out)
	}
	exchanges, err := os.ReadFile(log)
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	var doc published
	if err := json.Unmarshal(text, &doc); err != nil {
		t.Fatal(err)
	}
	check := jsonschema.Validator{Complete: true, Resolve: func(ref string) *jsonschema.Schema {
		return doc.Components.Schemas.Get(strings.TrimPrefix(ref, "#/components/schemas/"))
	}}
	held := map[string]int{}
	for line := range bytes.Lines(exchanges) {
		var e exchange
		if err := json.Unmarshal(line, &e); err != nil {
			t.Fatal(err)
		}
		if o, described := doc.operationAt(e.Method, e.Path); described {
			held[e.Method+" "+e.Path]++
			e.hold(t, check, o)
		}
	}
	for _, o := range api.Operations {
		if held[o.Method+" "+o.Address()] == 0 {
			t.Errorf("no exchange of %s %s was held against the description", o.Method, o.Path)
		}
	}
}

// hold holds the answer to its description, and a request that was answered.
func (e exchange) hold(t *testing.T, check jsonschema.Validator, o publishedOperation) {
	t.Helper()
	fits := func(what string, s *jsonschema.Schema, text string) {
		if err := check.Validate(s, []byte(text)); err != nil {
			t.Errorf("%s %s: %s is not as described: %v\n%.300s", e.Method, e.Path, what, err, text)
		}
	}
	content, ok := o.Responses[strconv.Itoa(e.Status)].Content[e.Kind]
	switch {
	case !ok:
		t.Errorf(
			"%s %s answers %d in %q, which is not described", e.Method, e.Path, e.Status, e.Kind,
		)
	case e.Kind == api.JSON || e.Kind == api.ProblemJSON:
		fits("an answer", content.Schema, e.Answer)
	case e.Kind == api.NDJSON:
		for line := range strings.Lines(e.Answer) {
			fits("a line of an answer", content.Schema, line)
		}
	}
	if e.Media == api.JSON && e.Status == 200 {
		fits("a request", o.RequestBody.Content[e.Media].Schema, e.Body)
	}
}
