package work_test

import (
	"bytes"
	"encoding/json"
	"os"
	"testing"

	"github.com/satline/satline/internal/tool/jsonschema"
	"github.com/satline/satline/work"
)

func checked(t *testing.T, file string) func([]byte) error {
	t.Helper()
	text, err := os.ReadFile("../testdata/schema/" + file)
	if err != nil {
		t.Fatal(err)
	}
	s, err := jsonschema.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	return s.Describes
}

// Every order of the demonstrations fits its schema, as written by hand and as a program writes
// it, and so does its record.
func TestSchemasHold(t *testing.T) {
	order, record := checked(t, "order.schema.json"), checked(t, "record.schema.json")
	for name, text := range files(t) {
		if bytes.Contains(text, []byte(`"orders"`)) {
			continue
		}
		if err := order(text); err != nil {
			t.Errorf("%s: %v", name, err)
		}
		o, err := work.Decode(text)
		if err != nil {
			t.Fatal(err)
		}
		if written, err := json.Marshal(o); err != nil {
			t.Errorf("%s: %v", name, err)
		} else if err := order(written); err != nil {
			t.Errorf("%s as written: %v", name, err)
		}
		r, err := work.Judge(o)
		if err != nil {
			t.Fatal(err)
		}
		if written, err := json.Marshal(r); err != nil {
			t.Errorf("%s: %v", name, err)
		} else if err := record(written); err != nil {
			t.Errorf("%s judged: %v", name, err)
		}
	}
}
