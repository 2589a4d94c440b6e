package work_test

import (
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"github.com/satline/satline/strictjson"
	"github.com/satline/satline/work"
	"pgregory.net/rapid"
)

func TestDecodeRefuses(t *testing.T) {
	for text, want := range map[string]string{
		``:                        "empty",
		`{"tasks": ["maintain"]`:  "ends too early",
		`{"task": ["maintain"]}`:  `did you mean "tasks"`,
		`{"tasks": ["paint it"]}`: `"maintain"`,
		`{"tasks": ["maintain"], "start": "07/14/2026"}`:           `"2026-07-14"`,
		`{"evacuations": [{"decay": [{"vacuum": "300 micron"}]}]}`: "decay[0].at",
		`{"cylinders": [{"before": "12"}]}`:                        "unit",
		`null`:                                                     "null",
	} {
		_, err := work.Decode([]byte(text))
		if err == nil || !strings.Contains(err.Error(), want) ||
			strings.Contains(err.Error(), "\n") {
			t.Errorf("%s: %v", text, err)
		}
		if _, ok := errors.AsType[*strictjson.Error](err); !ok || !errors.Is(err, work.ErrOrder) {
			t.Errorf("%s: %T", text, err)
		}
	}
	if _, err := work.Decode([]byte(strings.Repeat(" ", work.MaxOrderBytes+1))); err == nil {
		t.Error("a document without end is read")
	}
}

// Quantities are read with a comma where the language of the order writes one.
func TestDecodeComma(t *testing.T) {
	o, err := work.Decode(
		[]byte(`{"language": "es-AR", "cylinders": [{"name": "A", "before": "12,5 kg"}]}`),
	)
	if err != nil || o.Cylinders[0].Before.Kilograms() != 12.5 {
		t.Errorf("%+v, %v", o.Cylinders, err)
	}
}

// No text panics, and what is read reads back.
func FuzzDecode(f *testing.F) {
	for _, text := range files(f) {
		f.Add(text)
	}
	// Parts of which nothing was written down yet.
	f.Add([]byte(`{"recovery":{},"nitrogen":[{}],"evacuations":[{}],"joints":[{}],"leaks":[{}],` +
		`"cylinders":[{}],"water":[{}],"air":{},"checklist":[{}],"parts":[{}]}`))
	f.Add([]byte(`{"recovery":{},"nitrogen":[{}],"evacuations":[{}],"joints":[{}],` +
		`"cylinders":[{"name":"A"}],"water":[{}],"air":{}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		if o, err := work.Decode(data); err == nil {
			written, err := json.Marshal(o)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := work.Decode(written); err != nil {
				t.Fatalf("%s: %v", written, err)
			}
		}
		_, _ = work.DecodeHistory(data)
	})
}

// A document with anything torn out or put in is read or refused, and never panics.
func TestDecodeTorn(t *testing.T) {
	docs := files(t)
	var names []string
	for n := range docs {
		names = append(names, n)
	}
	rapid.Check(t, func(t *rapid.T) {
		text := string(docs[rapid.SampledFrom(names).Draw(t, "document")])
		at := rapid.IntRange(0, len(text)).Draw(t, "at")
		end := min(len(text), at+rapid.IntRange(0, 40).Draw(t, "length"))
		put := rapid.SampledFrom([]string{"", "{", "}", "[", `"`, "null", "-1", "1e999",
			"NaN"}).Draw(t, "put")
		if o, err := work.Decode([]byte(text[:at] + put + text[end:])); err == nil {
			_, _ = work.Judge(o)
		}
	})
}
