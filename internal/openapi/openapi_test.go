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
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/internal/jsonschema"
	"github.com/satline/satline/internal/schema"
)

var update = flag.Bool("update", false, "write openapi.json")

// file is the description, which the service embeds.
const file = "../../examples/service/openapi.json"

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
	b.Bare = append(b.Bare, reflect.TypeFor[api.Problem]().PkgPath())
	b.RefPrefix = "#/components/schemas/"
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
		op := ordered{{"operationId", o.ID}, {"summary", o.Summary}}
		if name, after, ok := strings.Cut(o.Path, "{"); ok && name != "" {
			op = append(op, member{"parameters", []ordered{{
				{"name", strings.TrimSuffix(after, "}")}, {"in", "path"}, {"required", true},
				{"schema", &jsonschema.Schema{Type: "string"}}, {"example", o.Parameter},
			}}})
		}
		if o.Takes != nil {
			content := ordered{{"schema", ref(o.Takes, true)}}
			if o.Example != "" {
				content = append(content, member{"example", json.RawMessage(o.Example)})
			}
			op = append(
				op,
				member{
					"requestBody",
					ordered{{"required", true}, {"content", ordered{{o.Media, content}}}},
				},
			)
		}
		answer := &jsonschema.Schema{Type: "string"}
		switch {
		case o.Gives != nil:
			answer = ref(o.Gives, false)
		case o.GivesKind == api.JSON:
			answer = &jsonschema.Schema{Type: "object"}
		}
		responses := ordered{
			{
				"200",
				ordered{
					{"description", "the answer"},
					{"content", ordered{{o.GivesKind, ordered{{"schema", answer}}}}},
				},
			},
		}
		for _, status := range o.Problems {
			kind, s, means := api.ProblemJSON, problem, titles(status)
			if o.Path == "/readyz" {
				kind, s, means = api.Text, &jsonschema.Schema{
					Type: "string",
				}, "the service is stopping"
			}
			responses = append(
				responses,
				member{
					strconv.Itoa(status),
					ordered{
						{"description", means},
						{"content", ordered{{kind, ordered{{"schema", s}}}}},
					},
				},
			)
		}
		op = append(op, member{"responses", responses})
		paths = append(paths, member{o.Path, ordered{{strings.ToLower(o.Method), op}}})
	}
	text, err := jsonschema.Write(ordered{
		{"openapi", "3.1.0"},
		{"info", ordered{
			{
				"title",
				"satline",
			}, {"version", "1"}, {"license", ordered{{"name", "MIT"}, {"identifier", "MIT"}}},
			{
				"description",
				"Refrigerant cycle, moist air, and the judgement of an air conditioner from its readings. Every value carries its unit in text, \"62 °F\"; a bare number is an error. Fields that are not known are left out; null is an error. An answer may gain fields, and never loses one or gives it another meaning. Every answer under /v1 has X-Request-Id, the one that was sent or a new one, which the log has too. Refrigerant work is licensed work: the unit's label, its maker's chart and local codes outrank every figure here.",
			},
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
// change on purpose: go test ./internal/openapi -run OpenAPI -update
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
			"openapi.json is not that of the service; go test ./internal/openapi -run OpenAPI -update, and read the diff",
		)
	}
}
