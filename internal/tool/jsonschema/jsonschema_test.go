package jsonschema

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
)

const sample = `{
  "$schema": "https://json-schema.org/draft/2020-12/schema",
  "$ref": "#/$defs/Thing",
  "$defs": {
    "Thing": {
      "type": "object",
      "properties": {
        "name": {"type": "string", "maxLength": 5},
        "kind": {"enum": ["a", "b"]},
        "share": {"type": "number", "minimum": 0, "maximum": 1},
        "count": {"type": "integer"},
        "on": {"type": "boolean"},
        "list": {"type": "array", "items": {"$ref": "#/$defs/Thing"}, "minItems": 1, "maxItems": 2},
        "code": {"pattern": "^[a-z]+$"},
        "either": {"oneOf": [
          {"type": "string"}, {"const": "x", "type": "string"}, {"type": "integer"}
        ]}
      },
      "required": ["name"],
      "additionalProperties": false
    }
  }
}`

func parse(t *testing.T) (*Schema, Validator) {
	t.Helper()
	s, err := Parse([]byte(sample))
	if err != nil {
		t.Fatal(err)
	}
	return s, Validator{Resolve: InDefs(s)}
}

func TestValidate(t *testing.T) {
	s, v := parse(t)
	for doc, want := range map[string]string{
		`{"name": "n", "kind": "a", "share": 0.5, "count": 3, "on": true,
			"list": [{"name": "m"}], "code": "z", "either": 1}`: "",
		`{"name": "n", "count": 1e2, "either": "y"}`: "",
		`{}`:                               `$: field "name" is missing`,
		`[]`:                               `$: want object, got []`,
		`{"name": 1}`:                      `$.name: want string, got 1`,
		`{"name": "longer"}`:               `$.name: longer than 5 characters`,
		`{"name": "n", "kind": "c"}`:       `$.kind: "c" is not one of ["a" "b"]`,
		`{"name": "n", "share": 2}`:        `$.share: 2 is out of bounds`,
		`{"name": "n", "share": "0.5"}`:    `$.share: want number, got "0.5"`,
		`{"name": "n", "count": 1.5}`:      `$.count: want integer, got 1.5`,
		`{"name": "n", "on": null}`:        `$.on: want boolean, got null`,
		`{"name": "n", "list": []}`:        `$.list: 0 items, want 1 to 2`,
		`{"name": "n", "list": [{}]}`:      `$.list[0]: field "name" is missing`,
		`{"name": "n", "code": "Z"}`:       `$.code: "Z" does not match ^[a-z]+$`,
		`{"name": "n", "either": "x"}`:     `$.either: 2 of 3 alternatives fit`,
		`{"name": "n", "either": true}`:    `$.either: 0 of 3 alternatives fit`,
		`{"name": "n", "more": 1}`:         `$: field "more" is not in the schema`,
		`{"name": "n"} {"name": "n"}`:      `more than one JSON value`,
		`{"name": `:                        `not JSON`,
		`{"name": "n", "share": 1e999999}`: `$.share: strconv.ParseFloat`,
	} {
		err := v.Validate(s, []byte(doc))
		if want == "" && err != nil ||
			want != "" && (err == nil || !strings.HasPrefix(err.Error(), want)) {
			t.Errorf("%s\n got %v\nwant %s", doc, err, want)
		}
	}
}

// A keyword that Validate does not know would be passed over in silence.
func TestParseRefusesUnknownKeywords(t *testing.T) {
	for _, doc := range []string{`{"minProperties": 1}`,
		`{"$defs": {"a": {"items": {"uniqueItems": true}}}}`} {
		if _, err := Parse([]byte(doc)); err == nil {
			t.Errorf("%s was taken", doc)
		}
	}
}

func TestWriteReadsBack(t *testing.T) {
	s, _ := parse(t)
	text, err := Write(s)
	if err != nil {
		t.Fatal(err)
	}
	back, err := Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(s, back); d != "" {
		t.Error(d)
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(sample))
	f.Add([]byte(`{"$ref": "#/$defs/a", "$defs": {"a": {"$ref": "#/$defs/a"}}}`))
	f.Fuzz(func(t *testing.T, text []byte) {
		s, err := Parse(text)
		if err != nil {
			return
		}
		if _, err := Write(s); err != nil {
			t.Errorf("read and not written: %v", err)
		}
	})
}

func FuzzValidate(f *testing.F) {
	s, err := Parse([]byte(sample))
	if err != nil {
		f.Fatal(err)
	}
	f.Add([]byte(`{"name": "n", "list": [{"name": "m"}]}`))
	f.Fuzz(func(t *testing.T, doc []byte) {
		if err := (Validator{Resolve: InDefs(s)}).Validate(s, doc); err != nil &&
			err.Error() == "" {
			t.Error("an error without words")
		}
	})
}
