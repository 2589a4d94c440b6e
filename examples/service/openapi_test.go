package main

import (
	"bytes"
	"encoding/json"
	"flag"
	"fmt"
	"net/http"
	"os"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/jsonschema"
	"github.com/satline/satline/internal/schema"
)

var update = flag.Bool("update", false, "write openapi.json")

// An operation is what the description says of one endpoint.
type operation struct {
	method, path     string
	id               string // by which a generated client calls it
	summary          string
	takes, gives     reflect.Type // nil where there is no JSON
	media, givesKind string
	example          string
	parameter        string // an example of what stands in the braces of the path
	problems         []int
}

const (
	asJSON    = "application/json"
	asNDJSON  = "application/x-ndjson"
	asProblem = "application/problem+json"
	asText    = "text/plain"
)

var operations = []operation{
	{
		method: "POST", path: "/v1/assess", id: "assess", summary: "Assess a visit. Scope \"verdict\" leaves out the next dose and the diagnosis, which take most of the time.",
		takes: reflect.TypeFor[satline.Visit](), gives: reflect.TypeFor[satline.Assessment](), media: asJSON, givesKind: asJSON,
		example: exampleVisit, problems: []int{400, 408, 413, 415, 422, 500, 503},
	},
	{
		method: "POST", path: "/v1/assess/batch", id: "assessBatch", summary: "Assess visits, one a line, each answered on a line of its own as soon as it has come. A line that cannot be assessed, or is longer than 1 MiB, has a problem for an answer and does not end the batch. At most 100000 lines, each at most 15 s in coming. A result whose problem is /problems/stopping, or /problems/too-large on line 100001, is the last one: send that line and those after it again.",
		takes: reflect.TypeFor[satline.Visit](), gives: reflect.TypeFor[BatchResult](), media: asNDJSON, givesKind: asNDJSON,
		problems: []int{415, 500},
	},
	{
		method: "GET", path: "/v1/refrigerants", id: "listRefrigerants", summary: "Every refrigerant that is known, by designation.",
		gives: reflect.TypeFor[[]RefrigerantName](), givesKind: asJSON, problems: []int{500},
	},
	{
		method: "GET", path: "/v1/refrigerants/{name}", id: "getRefrigerant", summary: "What is known of one refrigerant, in any usual spelling of its designation.",
		gives: reflect.TypeFor[RefrigerantSheet](), givesKind: asJSON, parameter: "R-454B", problems: []int{404, 500},
	},
	{
		method: "POST", path: "/v1/refrigerant/saturation", id: "saturation", summary: "Bubble and dew temperature at a pressure, with superheat and subcooling of a pipe; or bubble and dew pressure at a temperature.",
		takes: reflect.TypeFor[SaturationQuestion](), gives: reflect.TypeFor[SaturationAnswer](), media: asJSON, givesKind: asJSON,
		example: `{"refrigerant": "R-454B", "gauge": "118 psig", "elevation": "6000 ft", "line": "52 °F"}`, problems: []int{400, 408, 413, 415, 422, 500, 503},
	},
	{
		method: "POST", path: "/v1/refrigerant/state", id: "state", summary: "Density, enthalpy, entropy and the rest at an absolute pressure and one more property.",
		takes: reflect.TypeFor[StateQuestion](), gives: reflect.TypeFor[StateAnswer](), media: asJSON, givesKind: asJSON,
		example: `{"refrigerant": "R-32", "pressure": "900 kPa", "temperature": "15 °C"}`, problems: []int{400, 408, 413, 415, 422, 500, 503},
	},
	{
		method: "POST", path: "/v1/air", id: "air", summary: "The state of moist air at any altitude.",
		takes: reflect.TypeFor[AirQuestion](), gives: reflect.TypeFor[AirAnswer](), media: asJSON, givesKind: asJSON,
		example: `{"dryBulb": "75 °F", "wetBulb": "62 °F", "elevation": "6000 ft"}`, problems: []int{400, 408, 413, 415, 422, 500, 503},
	},
	{
		method: "POST", path: "/v1/charge/target", id: "chargeTarget", summary: "What superheat, subcooling or approach should read, how near is near enough, and where both come from.",
		takes: reflect.TypeFor[TargetQuestion](), gives: reflect.TypeFor[charge.Target](), media: asJSON, givesKind: asJSON,
		example: `{"method": "superheat", "returnWetBulb": "64 °F ± 0.6 °F", "outdoorDryBulb": "88 °F ± 0.6 °F"}`, problems: []int{400, 408, 413, 415, 422, 500, 503},
	},
	{
		method: "GET", path: "/problems/{kind}", id: "problemKind", summary: "What a kind of problem means, at the address that is its type.",
		gives: reflect.TypeFor[Problem](), givesKind: asJSON, parameter: "input", problems: []int{404, 500},
	},
	{method: "GET", path: "/openapi.json", id: "description", summary: "This description.", givesKind: asJSON},
	{method: "GET", path: "/healthz", id: "alive", summary: "Says that the process is alive.", givesKind: asText},
	{method: "GET", path: "/readyz", id: "ready", summary: "Says that it takes requests; 503 when it is stopping.", givesKind: asText, problems: []int{503}},
	{method: "GET", path: "/metrics", id: "metrics", summary: "Counts and times, in the Prometheus text format.", givesKind: asText},
}

// address is the path with its parameter put in.
func (o operation) address() string {
	return strings.NewReplacer("{name}", o.parameter, "{kind}", o.parameter).Replace(o.path)
}

const exampleVisit = `{
  "title": "Invented", "units": "IP",
  "equipment": {"refrigerant": "R-410A", "metering": "fixed restrictor", "nominalCapacity": "3 ton"},
  "site": {"elevation": "6000 ft"},
  "readings": {
    "suctionPressure": "118 psig", "suctionLine": "70 °F", "liquidPressure": "318 psig", "liquidLine": "96 °F",
    "outdoorDryBulb": "82 °F", "returnDryBulb": "75 °F", "returnWetBulb": "63 °F ± 0.6 °F"
  }
}`

// ordered is a JSON object that keeps the order of its members.
type ordered []member

type member struct {
	name  string
	value any
}

func (o ordered) MarshalJSON() ([]byte, error) {
	var b bytes.Buffer
	b.WriteByte('{')
	for i, m := range o {
		if i > 0 {
			b.WriteByte(',')
		}
		fmt.Fprintf(&b, "%q:", m.name)
		enc := json.NewEncoder(&b)
		enc.SetEscapeHTML(false)
		if err := enc.Encode(m.value); err != nil {
			return nil, err
		}
	}
	b.WriteByte('}')
	return b.Bytes(), nil
}

func description(t *testing.T) []byte {
	t.Helper()
	b := schema.Builder("../..")
	b.Bare = append(b.Bare, reflect.TypeFor[Problem]().PkgPath())
	b.RefPrefix = "#/components/schemas/"
	ref := func(of reflect.Type, closed bool) *jsonschema.Schema {
		b.Closed = closed
		s, err := b.Type(of)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	problem := ref(reflect.TypeFor[Problem](), false)
	var paths ordered
	for _, o := range operations {
		op := ordered{{"operationId", o.id}, {"summary", o.summary}}
		if name, after, ok := strings.Cut(o.path, "{"); ok && name != "" {
			op = append(op, member{"parameters", []ordered{{
				{"name", strings.TrimSuffix(after, "}")}, {"in", "path"}, {"required", true},
				{"schema", &jsonschema.Schema{Type: "string"}}, {"example", o.parameter},
			}}})
		}
		if o.takes != nil {
			content := ordered{{"schema", ref(o.takes, true)}}
			if o.example != "" {
				content = append(content, member{"example", json.RawMessage(o.example)})
			}
			op = append(op, member{"requestBody", ordered{{"required", true}, {"content", ordered{{o.media, content}}}}})
		}
		answer := &jsonschema.Schema{Type: "string"}
		switch {
		case o.gives != nil:
			answer = ref(o.gives, false)
		case o.givesKind == asJSON:
			answer = &jsonschema.Schema{Type: "object"}
		}
		responses := ordered{{"200", ordered{{"description", "the answer"}, {"content", ordered{{o.givesKind, ordered{{"schema", answer}}}}}}}}
		for _, status := range o.problems {
			kind, s, means := asProblem, problem, titles(status)
			if o.path == "/readyz" {
				kind, s, means = asText, &jsonschema.Schema{Type: "string"}, "the service is stopping"
			}
			responses = append(responses, member{strconv.Itoa(status), ordered{{"description", means}, {"content", ordered{{kind, ordered{{"schema", s}}}}}}})
		}
		op = append(op, member{"responses", responses})
		paths = append(paths, member{o.path, ordered{{strings.ToLower(o.method), op}}})
	}
	text, err := jsonschema.Write(ordered{
		{"openapi", "3.1.0"},
		{"info", ordered{
			{"title", "satline"}, {"version", "1"}, {"license", ordered{{"name", "MIT"}, {"identifier", "MIT"}}},
			{"description", "Refrigerant cycle, moist air, and the judgement of an air conditioner from its readings. Every value carries its unit in text, \"62 °F\"; a bare number is an error. Fields that are not known are left out; null is an error. An answer may gain fields, and never loses one or gives it another meaning. Every answer under /v1 has X-Request-Id, the one that was sent or a new one, which the log has too. Refrigerant work is licensed work: the unit's label, its maker's chart and local codes outrank every figure here."},
		}},
		{"jsonSchemaDialect", jsonschema.Dialect},
		{"paths", paths},
		{"components", ordered{{"schemas", b.Defs()}}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return text
}

func titles(status int) string {
	var out []string
	for _, p := range problemTypes {
		if p.Status == status {
			out = append(out, p.Type+": "+p.Title)
		}
	}
	if out == nil {
		return http.StatusText(status)
	}
	return strings.Join(out, " ")
}

// The description is that of the types and endpoints as they are. After a
// change on purpose: go test ./examples/service -run OpenAPI -update
func TestOpenAPIIsFresh(t *testing.T) {
	want := description(t)
	if *update {
		if err := os.WriteFile("openapi.json", want, 0o644); err != nil {
			t.Fatal(err)
		}
		openAPI = want
	}
	if !bytes.Equal(openAPI, want) {
		t.Error("openapi.json is not that of the service; go test ./examples/service -run OpenAPI -update, and read the diff")
	}
}

func TestEveryEndpointIsDescribed(t *testing.T) {
	s := quietService(t)
	for _, c := range s.metrics.counters {
		if c.pattern == "/" {
			continue
		}
		if !slices.ContainsFunc(operations, func(o operation) bool { return o.method+" "+o.path == c.pattern }) {
			t.Errorf("%s is served and not described", c.pattern)
		}
	}
	for _, o := range operations {
		r, err := http.NewRequest(o.method, "http://localhost"+o.address(), nil)
		if err != nil {
			t.Fatal(err)
		}
		if _, pattern := s.mux.Handler(r); pattern != o.method+" "+o.path {
			t.Errorf("%s %s is described and served by %q", o.method, o.path, pattern)
		}
	}
}

// published is openapi.json as a client reads it.
type published struct {
	Paths      map[string]map[string]publishedOperation
	Components struct{ Schemas jsonschema.Properties }
}

type publishedOperation struct {
	RequestBody struct{ Content map[string]publishedContent }
	Responses   map[string]struct{ Content map[string]publishedContent }
}

type publishedContent struct {
	Schema  *jsonschema.Schema
	Example json.RawMessage
}

func readDescription(t testing.TB) (published, jsonschema.Validator) {
	t.Helper()
	var d published
	if err := json.Unmarshal(openAPI, &d); err != nil {
		t.Fatal(err)
	}
	return d, jsonschema.Validator{Complete: true, Resolve: func(ref string) *jsonschema.Schema {
		return d.Components.Schemas.Get(strings.TrimPrefix(ref, "#/components/schemas/"))
	}}
}

// operationAt finds what the description says of a request.
func (d published) operationAt(method, path string) (publishedOperation, bool) {
	for _, p := range []string{"/v1/refrigerants/{name}", "/problems/{kind}"} {
		if head, _, _ := strings.Cut(p, "{"); strings.HasPrefix(path, head) {
			path = p
		}
	}
	o, ok := d.Paths[path][strings.ToLower(method)]
	return o, ok
}
