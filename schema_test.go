package satline_test

import (
	"bytes"
	"encoding/json"
	"flag"
	"io/fs"
	"maps"
	"net/url"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/tool/jsonschema"
	"github.com/satline/satline/internal/tool/schema"
)

var update = flag.Bool("update", false, "write what is kept under testdata anew")

var schemas = []struct {
	file string
	make func(dir string) (*jsonschema.Schema, error)
}{
	{"testdata/schema/visit.schema.json", schema.Visit},
	{"testdata/schema/assessment.schema.json", schema.Assessment},
	{"testdata/schema/order.schema.json", schema.Order},
	{"testdata/schema/record.schema.json", schema.Record},
}

// The schemas are those of the types as they are. After a change on purpose:
// go test -run TestSchemas . -update
func TestSchemasAreFresh(t *testing.T) {
	for _, s := range schemas {
		made, err := s.make(".")
		if err != nil {
			t.Fatal(err)
		}
		want, err := jsonschema.Write(made)
		if err != nil {
			t.Fatal(err)
		}
		if *update {
			if err := os.WriteFile(s.file, want, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		got, err := os.ReadFile(s.file)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf(
				"%s is not that of the types; go test -run TestSchemas . -update, "+
					"and read the diff",
				s.file,
			)
		}
	}
}

func checked(t *testing.T, file string) func([]byte) error {
	t.Helper()
	text, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	s, err := jsonschema.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return s.Describes
}

// Every visit that is checked in fits its schema, as written by hand and as a
// program writes it; and so do the assessments made of them, field for field.
func TestSchemasHold(t *testing.T) {
	visit, assessment := checked(t, schemas[0].file), checked(t, schemas[1].file)
	docs := map[string][]byte{
		"barest": []byte(`{"equipment": {"refrigerant": "R-32", "metering": "TXV"}}`),
	}
	for _, dir := range []string{"testdata/visits", "examples/visit/demo"} {
		files, err := fs.Glob(os.DirFS(dir), "*.json")
		if err != nil || len(files) == 0 {
			t.Fatalf("%s: %d files, %v", dir, len(files), err)
		}
		for _, f := range files {
			text, err := os.ReadFile(filepath.Join(dir, f))
			if err != nil {
				t.Fatal(err)
			}
			docs[f] = text
			docs[f+", verdict only"] = bytes.Replace(
				text, []byte("{"), []byte(`{"scope": "verdict",`), 1,
			)
		}
	}
	for name, text := range docs {
		if err := visit(text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		v, err := satline.DecodeVisit(text)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if written, err := json.Marshal(v); err != nil {
			t.Errorf("%s: %v", name, err)
		} else if err := visit(written); err != nil {
			t.Errorf("%s as written: %v", name, err)
		}
		a, err := satline.Assess(v)
		if err != nil {
			t.Errorf("%s: %v", name, err)
			continue
		}
		if written, err := json.Marshal(a); err != nil {
			t.Errorf("%s: %v", name, err)
		} else if err := assessment(written); err != nil {
			t.Errorf("%s assessed: %v", name, err)
		}
	}
}

// Every example that a schema prints is read where it stands: a document is made for
// each field of each schema, of what the schema prints and asks for.
func TestSchemaExamplesAreRead(t *testing.T) {
	for _, c := range []struct {
		file string
		read func([]byte) error
	}{
		{schemas[0].file, func(doc []byte) error {
			_, err := satline.DecodeVisit(doc)
			return err
		}},
		{schemas[1].file, func(doc []byte) error {
			return json.Unmarshal(doc, new(satline.Assessment))
		}},
	} {
		text, err := os.ReadFile(c.file)
		if err != nil {
			t.Fatal(err)
		}
		root, err := jsonschema.Parse(text)
		if err != nil {
			t.Fatal(err)
		}
		if u, err := url.Parse(root.ID); err != nil || !u.IsAbs() {
			t.Errorf("%s: the $id %q is not absolute", c.file, root.ID)
		}
		p := printer{resolve: jsonschema.InDefs(root), printed: map[*jsonschema.Schema]bool{}}
		for _, v := range p.documents(root) {
			doc, err := json.Marshal(v)
			if err == nil {
				err = root.Describes(doc)
			}
			if err == nil {
				err = c.read(doc)
			}
			if err != nil {
				t.Errorf("%s: %.300s: %v", c.file, doc, err)
			}
		}
		for _, def := range root.Defs {
			if len(def.Schema.Examples) > 0 && !p.printed[def.Schema] {
				t.Errorf("%s: no document has the example of %s", c.file, def.Name)
			}
		}
	}
}

// A printer makes values that fit a schema.
type printer struct {
	resolve func(ref string) *jsonschema.Schema
	printed map[*jsonschema.Schema]bool // whose examples were used
}

// documents returns values of s that have, between them, every field below it.
func (p printer) documents(s *jsonschema.Schema) []any {
	if s.Ref != "" {
		s = p.resolve(s.Ref)
	}
	switch s.Type {
	case "array":
		var out []any
		for _, item := range p.documents(s.Items) {
			out = append(out, []any{item})
		}
		return out
	case "object":
		return p.objects(s)
	case "number", "integer":
		return []any{1}
	case "boolean":
		return []any{true}
	}
	p.printed[s] = true
	if len(s.Examples) > 0 {
		return s.Examples
	}
	if len(s.Enum) > 0 {
		return []any{s.Enum[0]}
	}
	return []any{"a text"}
}

func (p printer) objects(s *jsonschema.Schema) []any {
	required := map[string]any{}
	for _, name := range s.Required {
		required[name] = p.documents(s.Properties.Get(name))[0]
	}
	out := []any{required}
	for _, property := range s.Properties {
		for _, v := range p.documents(property.Schema) {
			doc := maps.Clone(required)
			doc[property.Name] = v
			out = append(out, doc)
		}
	}
	return out
}

// What the reader of visits takes as people write it, the schema takes.
func TestVisitSchemaTakes(t *testing.T) {
	visit := checked(t, schemas[0].file)
	for path, text := range map[string]string{
		"lineSet":     `{"length": "12 ft 6 in", "liquidDiameter": "1 1/8 in"}`,
		"label":       `{"charge": "6 lb 4 oz", "subcooling": "10 F +/- 2 F"}`,
		"accessories": `[{"name": "drier", "mass": "1 1/2 oz"}]`, "nominalCapacity": `"3TR"`,
	} {
		doc := []byte(
			`{"equipment": {"refrigerant": "R-32", "metering": "TXV", "` + path + `": ` + text +
				`}}`,
		)
		if _, err := satline.DecodeVisit(doc); err != nil {
			t.Errorf("%s: %v", text, err)
		}
		if err := visit(doc); err != nil {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// What the reader of visits refuses for its form, the schema refuses.
func TestVisitSchemaRefuses(t *testing.T) {
	visit := checked(t, schemas[0].file)
	const machine = `"equipment": {"refrigerant": "R-32", "metering": "TXV"}`
	for doc, want := range map[string]string{
		`{}`:                                 `$: field "equipment" is missing`,
		`{"equipment": {"metering": "TXV"}}`: `$.equipment: field "refrigerant" is missing`,
		`{"equipment": {"refrigerant": "R-32",
			"metering": "valve"}}`: `$.equipment.metering: "valve" is not one of`,
		`{` + machine + `, "reading": {}}`: `$: field "reading" is not in the schema`,

		`{` + machine + `,
			"readings": {"liquidLine": "62"}}`: `$.readings.liquidLine: "62" does not match`,
		`{` + machine + `,
			"readings": {"liquidLine": 62}}`: `$.readings.liquidLine: want string, got 62`,
		`{` + machine + `,
			"readings": {"liquidLine": "71 °F ± 1"}}`: `does not match`,
		`{` + machine + `,
			"conditions": {"running": "soon"}}`: `$.conditions.running: "soon" does not match`,
		`{` + machine + `, "log": [
			{"at": "1m", "suctionLine": "cold"}]}`: `$.log[0].suctionLine: "cold" does not match`,
	} {
		if err := visit([]byte(doc)); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: got %v, want %s", doc, err, want)
		}
		if v, err := satline.DecodeVisit([]byte(doc)); err == nil {
			if _, err := satline.Assess(v); err == nil {
				t.Errorf("%s: the reader takes it", doc)
			}
		}
	}
}
