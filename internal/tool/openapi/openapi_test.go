// Package openapi writes the description of the service of examples/service, and
// holds the exchanges of the service's own tests against it.
package openapi

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

	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/internal/tool/jsonschema"
	"github.com/satline/satline/internal/tool/schema"
)

var update = flag.Bool("update", false, "write openapi.json")

// file is the description, which package api embeds.
const file = "../../../examples/service/api/openapi.json"

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
	b := schema.Builder("../../..")
	b.Bare = append(b.Bare, reflect.TypeFor[api.Problem]().PkgPath())
	b.RefPrefix = "#/components/schemas/"
	b.Units = true
	ref := func(of reflect.Type, closed bool) *jsonschema.Schema {
		b.Closed = closed
		s, err := b.Type(of)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
	problem := ref(reflect.TypeFor[api.Problem](), false)
	var paths ordered
	for _, o := range api.Operations {
		op := ordered{
			{"operationId", o.ID}, {"tags", []string{o.Tag}}, {"summary", brief(o.Summary)},
			{"description", o.Summary},
		}
		var parameters []ordered
		if name, after, ok := strings.Cut(o.Path, "{"); ok && name != "" {
			parameters = append(parameters, ordered{
				{"name", strings.TrimSuffix(after, "}")}, {"in", "path"}, {"required", true},
				{"schema", &jsonschema.Schema{Type: "string"}}, {"example", o.Parameter},
			})
		}
		for _, name := range []string{"units", "X-Request-Id", "traceparent"} {
			if name != "units" || o.ID != "description" {
				parameters = append(parameters, refTo("parameters", name))
			}
		}
		if o.Constant {
			parameters = append(parameters, refTo("parameters", "If-None-Match"))
		}
		op = append(op, member{"parameters", parameters})
		if o.Takes != nil {
			content := ordered{{"schema", ref(o.Takes, true)}}
			if o.Example != "" {
				content = append(content, member{"example", json.RawMessage(o.Example)})
			}
			op = append(op, member{"requestBody",
				ordered{{"required", true}, {"content", ordered{{o.Media, content}}}}})
		}
		answer := &jsonschema.Schema{Type: "object"}
		if o.Gives != nil {
			answer = ref(o.Gives, false)
		}
		headers := []string{"X-Request-Id", "Server"}
		if o.Constant {
			headers = append(headers, "ETag", "Cache-Control")
		}
		responses := ordered{{"200", response("the answer", headers, o.GivesKind, answer)}}
		if o.Constant {
			responses = append(responses, member{"304", ordered{
				{"description", "what the client has is still so"}, {"headers", headersOf(headers)},
			}})
		}
		statuses := slices.Sorted(slices.Values(append([]int{429, 500}, o.Problems...)))
		for _, status := range statuses {
			headers := []string{"X-Request-Id", "Server"}
			switch status {
			case 415:
				headers = append(headers, "Accept", "Accept-Encoding")
			case 429, 503:
				headers = append(headers, "Retry-After")
			}
			responses = append(responses, member{strconv.Itoa(status),
				response(titles(status), headers, api.ProblemJSON, problem)})
		}
		responses = append(responses, member{"default", response("what else may be wrong: "+
			titles(404)+" "+titles(405), []string{"X-Request-Id", "Server", "Allow"},
			api.ProblemJSON, problem)})
		op = append(op, member{"responses", responses})
		paths = append(paths, member{o.Path, ordered{{strings.ToLower(o.Method), op}}})
	}
	kinds := b.Defs().Get("Problem").Properties.Get("type")
	for _, p := range api.Problems {
		kinds.Enum = append(kinds.Enum, p.Type)
	}
	text, err := jsonschema.Write(ordered{
		{"openapi", "3.1.0"},
		{"info", ordered{
			{"title", "satline"}, {"version", "1"},
			{"license", ordered{{"name", "MIT"}, {"identifier", "MIT"}}},
			{"contact", ordered{{"name", "whoever runs this service"}}}, {"description", about},
		}},
		{"servers", []ordered{{{"url", "/"}, {"description", "where this description is served"}}}},
		{"security", []ordered{}},
		{"tags", []ordered{
			{{"name", "assessments"}, {"description", "visits to machines, judged"}},
			{{"name", "refrigerants"}, {"description", "what is known of refrigerants"}},
			{{"name", "air"}, {"description", "moist air"}},
			{{"name", "charge"}, {"description", "what a charging method should read"}},
			{{"name", "service"}, {"description", "the service itself"}},
		}},
		{"jsonSchemaDialect", jsonschema.Dialect},
		{"paths", paths},
		{"components", ordered{
			{"parameters", parameters}, {"headers", headers}, {"schemas", b.Defs()},
		}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return text
}

const about = `Refrigerant cycle, moist air, and the judgement of an air conditioner from its ` +
	`readings. Every value carries its unit in text, "62 °F"; a bare number is an error, and so ` +
	`is the unit of another quantity: x-units of a schema lists those it may have. Fields that ` +
	`are not known are left out; null is an error. An answer may gain fields, and never loses ` +
	`one or gives it another meaning. Every request may be sent again: nothing is kept. Bodies ` +
	`may be packed with gzip both ways. The service asks for no sign-in; put what you need ` +
	`before it. Refrigerant work is licensed work: the unit's label, its maker's chart and ` +
	`local codes outrank every figure here.`

// brief is the first sentence, without its point.
func brief(summary string) string {
	first, _, _ := strings.Cut(summary, ". ")
	return strings.TrimSuffix(first, ".")
}

func refTo(kind, name string) ordered {
	return ordered{{"$ref", "#/components/" + kind + "/" + name}}
}

func headersOf(names []string) ordered {
	var out ordered
	for _, name := range names {
		out = append(out, member{name, refTo("headers", name)})
	}
	return out
}

func response(means string, headers []string, kind string, s *jsonschema.Schema) ordered {
	return ordered{{"description", means}, {"headers", headersOf(headers)},
		{"content", ordered{{kind, ordered{{"schema", s}}}}}}
}

func parameter(in, name, means string, s *jsonschema.Schema) member {
	return member{name, ordered{{"name", name}, {"in", in}, {"description", means}, {"schema", s}}}
}

var (
	parameters = ordered{
		parameter("query", "units", "the units of the answer, rounded to what is known of each "+
			"value; exact has every digit, in the units in which the library writes them. Without "+
			"it, those of the visit; of another question, inch-pound where any of its values is.",
			&jsonschema.Schema{Type: "string", Enum: []string{"IP", "SI", "exact"}}),
		parameter("header", "X-Request-Id", "what the request is to be called in the answer and "+
			"in the log: at most 64 letters, digits and -._", &jsonschema.Schema{Type: "string"}),
		parameter("header", "traceparent", "the trace that the request belongs to, by W3C Trace "+
			"Context; the log has it", &jsonschema.Schema{Type: "string"}),
		parameter("header", "If-None-Match", "the ETag of the answer that the client has",
			&jsonschema.Schema{Type: "string"}),
	}
	headers = ordered{
		header("X-Request-Id", "the name of the request, the one that was sent or a new one"),
		header("Server", "satline/ and the version that runs"),
		header("ETag", "names this state of the answer"),
		header("Cache-Control", "how long the answer holds without asking"),
		header("Retry-After", "seconds after which to try again"),
		header("Allow", "with 405, the methods that the path answers to"),
		header("Accept", "the media type that is taken, where another was sent"),
		header("Accept-Encoding", "the packings that are taken, where another was sent"),
	}
)

func header(name, means string) member {
	return member{name, ordered{{"description", means},
		{"schema", &jsonschema.Schema{Type: "string"}}}}
}

func titles(status int) string {
	var out []string
	for _, p := range api.Problems {
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
// change on purpose: go test ./internal/tool/openapi -run OpenAPI -update
func TestOpenAPIIsFresh(t *testing.T) {
	want := description(t)
	if *update {
		if err := os.WriteFile(file, want, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	got, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(got, want) {
		t.Error(
			"openapi.json is not that of the service; go test ./internal/tool/openapi -run " +
				"OpenAPI -update, and read the diff",
		)
	}
}
