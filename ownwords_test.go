package satline_test

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline"
)

// A program that reads codes and quantities says the same whatever language the assessment
// speaks, and says something of every visit.
func TestOwnWords(t *testing.T) {
	if testing.Short() {
		t.Skip("SKIPPED in short mode: it builds a program")
	}
	program := filepath.Join(t.TempDir(), "ownwords.exe")
	if out, err := exec.Command("go", "build", "-o", program, "./testdata/ownwords").CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	visits, err := filepath.Glob("testdata/visits/*.json")
	if err != nil || len(visits) == 0 {
		t.Fatal("no visits", err)
	}
	for _, file := range visits {
		doc, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		v, err := satline.DecodeVisit(doc)
		if err != nil {
			t.Fatal(err)
		}
		var said [2]string
		for i, language := range []satline.Language{satline.English, satline.Spanish} {
			v.Language = language
			in, err := json.Marshal(v)
			if err != nil {
				t.Fatal(err)
			}
			run := exec.Command(program)
			run.Stdin = bytes.NewReader(in)
			out, err := run.CombinedOutput()
			if err != nil {
				t.Fatalf("%s: %v\n%s", file, err, out)
			}
			said[i] = string(out)
		}
		if d := cmp.Diff(said[0], said[1]); d != "" || said[0] == "" {
			t.Errorf("%s: (-en +es):\n%s", file, d)
		}
	}
}

// Where a language writes a decimal comma, a visit may, at every depth; elsewhere not.
func TestDecodeVisitWithComma(t *testing.T) {
	const rest = `, "equipment": {"refrigerant": "R-410A", "label": {"charge": "3,2 kg"}},
		"readings": {"suctionPressure": "8,25 barg ± 0,05 bar"},
		"log": [{"at": "5m", "suctionPressure": "8,5 barg"}]}`
	v, err := satline.DecodeVisit([]byte(`{"language": "es-AR"` + rest))
	if err != nil {
		t.Fatal(err)
	}
	same, err := satline.DecodeVisit(
		[]byte(`{"language": "es-AR", "equipment": {"refrigerant": "R-410A",
		"label": {"charge": "3.2 kg"}}, "readings": {"suctionPressure": "8.25 barg ± 0.05 bar"},
		"log": [{"at": "5m", "suctionPressure": "8.5 barg"}]}`),
	)
	if err != nil {
		t.Fatal(err)
	}
	if d := cmp.Diff(same, v); d != "" {
		t.Error(d)
	}
	for _, language := range []string{"en", "es-MX", "es"} {
		_, err := satline.DecodeVisit([]byte(`{"language": "` + language + `"` + rest))
		t.Logf("%s: %v", language, err)
		if (err == nil) != (language == "es") {
			t.Errorf("%s: error %v", language, err)
		}
	}
}
