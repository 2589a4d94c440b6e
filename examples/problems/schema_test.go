//go:build !copied

// The tools for schemas are satline's own: a copy of the program stands without them.

package main

import (
	"encoding/json"
	"os"
	"reflect"
	"testing"

	"github.com/satline/satline/internal/tool/jsonschema"
)

func documentSchema(t *testing.T) *jsonschema.Schema {
	b := jsonschema.NewBuilder("github.com/satline/satline", "../..")
	b.Closed = true
	b.Bare = []string{"github.com/satline/satline/examples/problems"}
	ref, err := b.Type(reflect.TypeFor[Document]())
	if err != nil {
		t.Fatal(err)
	}
	return &jsonschema.Schema{
		Dialect: jsonschema.Dialect, ID: "https://satline.invalid/schema/problems/2",
		Title: "A problem set", Ref: ref.Ref, Defs: b.Defs(),
	}
}

// The schema is that of the types, and every set keeps it.
func TestJSON(t *testing.T) {
	want, err := jsonschema.Write(documentSchema(t))
	if err != nil {
		t.Fatal(err)
	}
	if *update {
		if err := os.WriteFile("schema.json", want, 0o644); err != nil {
			t.Fatal(err)
		}
	} else if string(want) != schemaJSON {
		t.Fatal("schema.json is stale; go test ./examples/problems -run JSON -update")
	}
	schema, err := jsonschema.Parse(want)
	if err != nil {
		t.Fatal(err)
	}
	exported(t, "json", func(t *testing.T, s Set, text string) {
		if err := schema.Describes([]byte(text)); err != nil {
			t.Error(err)
		}
		var d Document
		if err := json.Unmarshal([]byte(text), &d); err != nil {
			t.Fatal(err)
		}
		if d.Name != s.Name() || len(d.Problems) != len(s.Problems) || d.Version != Version {
			t.Errorf("%s has %d problems", d.Name, len(d.Problems))
		}
	})
}
