package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/satline/satline"
)

func TestDemosRun(t *testing.T) {
	for _, name := range demoNames() {
		for _, args := range [][]string{{"-demo", name}, {"-demo", name, "-units", "SI"},
			{"-demo", name, "-json"}, {"-demo", name, "-html", "-for", "file"},
			{"-demo", name, "-markdown", "-for", "owner"}} {
			var out, problems strings.Builder
			if status := run(args, nil, &out, &problems); status != 0 || problems.Len() != 0 {
				t.Fatalf("%v: status %d, %s", args, status, problems.String())
			}
			for _, bad := range []string{"%!", "NaN", "<nil>"} {
				if strings.Contains(out.String(), bad) {
					t.Errorf("%v prints %q", args, bad)
				}
			}
		}
	}
}

func TestNoArgumentRunsTheFirstDemo(t *testing.T) {
	var out, named strings.Builder
	run(nil, nil, &out, &out)
	run([]string{"-demo", firstDemo}, nil, &named, &named)
	if out.String() != named.String() || out.Len() == 0 {
		t.Errorf("no argument prints:\n%s", out.String())
	}
}

func TestJSONIsAnAssessment(t *testing.T) {
	var out strings.Builder
	if status := run([]string{"-json"}, nil, &out, &out); status != 0 {
		t.Fatal(out.String())
	}
	var a struct {
		Schema string `json:"schema"`
		Charge struct {
			Outcome string `json:"outcome"`
		} `json:"charge"`
	}
	if err := json.Unmarshal([]byte(out.String()), &a); err != nil ||
		a.Schema != satline.AssessmentSchema ||
		a.Charge.Outcome == "" {
		t.Errorf("%+v, %v", a, err)
	}
}

func TestFileAndStandardInput(t *testing.T) {
	doc, err := demos.ReadFile("demo/" + firstDemo + ".json")
	if err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "visit.json")
	if err := os.WriteFile(name, doc, 0o644); err != nil {
		t.Fatal(err)
	}
	var demo, file, input strings.Builder
	run(nil, nil, &demo, &demo)
	run([]string{name}, nil, &file, &file)
	run([]string{"-"}, strings.NewReader(string(doc)), &input, &input)
	if demo.String() != file.String() || demo.String() != input.String() {
		t.Error("the same visit prints differently from a file or from standard input")
	}
}

const partial = `{"equipment": {"refrigerant": "R-32", "metering": "TXV"},
  "readings": {"suctionPressure": "110 psig", "suctionLine": "48 °F",
    "liquidPressure": "330 psig"}}`

func TestPartialVisit(t *testing.T) {
	var out, problems strings.Builder
	if status := run([]string{"-"}, strings.NewReader(partial), &out, &problems); status != 0 ||
		out.Len() == 0 {
		t.Errorf("status %d, %s%s", status, problems.String(), out.String())
	}
}

// Bad input gets one line on standard error, status 2, and nothing on standard
// output.
func TestBadInput(t *testing.T) {
	dir := t.TempDir()
	write := func(name, text string) string {
		p := filepath.Join(dir, name)
		if err := os.WriteFile(p, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
		return p
	}
	for name, c := range map[string]struct {
		args []string
		want string
	}{
		"unknown refrigerant": {[]string{write("a",
			`{"equipment": {"refrigerant": "R-999", "metering": "TXV"}}`)},
			"equipment.refrigerant"},
		"missing unit": {[]string{write("b",
			`{"equipment": {"refrigerant": "R-32", "metering": "TXV"},
				"readings": {"suctionLine": "55"}}`)},
			"the unit is missing"},
		"unknown field": {[]string{write("c", `{"equipement": {}}`)},
			`did you mean "equipment"`},
		"impossible value": {[]string{write("d",
			`{"equipment": {"refrigerant": "R-32", "metering": "TXV"},
				"readings": {"suctionLine": "900 °F"}}`)},
			"out of range"},
		"no language": {[]string{"-language", "not a tag"}, "language"},
		"missing refrigerant": {[]string{write("e", `{"equipment": {"metering": "TXV"}}`)},
			"equipment.refrigerant"},
		"empty file": {[]string{write("f", "")}, "empty"},
		"huge file": {[]string{write("g", strings.Repeat(" ", satline.MaxVisitBytes+2))},
			"at most"},
		"no such file": {[]string{filepath.Join(dir, "none.json")}, "cannot be read"},
		"a folder":     {[]string{dir}, "cannot be read"},
		"two files":    {[]string{"a", "b"}, "one visit at a time"},
		"no such demo": {[]string{"-demo", "nowhere"}, "no demonstration"},
		"bad units":    {[]string{"-units", "metric"}, `"IP", "SI"`},
		"unknown reader": {[]string{"-for", "nobody"},
			`write one of "technician", "file", "owner"`},
		"unknown flag": {[]string{"-verbose"}, "verbose"},
	} {
		var out, problems strings.Builder
		status := run(c.args, nil, &out, &problems)
		if status != 2 || out.Len() != 0 {
			t.Errorf("%s: status %d, %d bytes on standard output", name, status, out.Len())
		}
		line := problems.String()
		if strings.Count(line, "\n") != 1 || !strings.HasSuffix(line, "\n") ||
			!strings.Contains(line, c.want) {
			t.Errorf("%s: standard error %q does not say %q in one line", name, line, c.want)
		}
	}
}

// A forecast answers first, and ends with how far to believe it.
func TestTonight(t *testing.T) {
	var out, problems strings.Builder
	if status := run([]string{"-demo", firstDemo, "-tonight", "60 °F"}, nil, &out,
		&problems); status != 0 {
		t.Fatal(problems.String())
	}
	text := out.String()
	night, believe := strings.Index(text, "At 60.0 °F outdoors"),
		strings.Index(text, "How far to believe this")
	if night < 0 || believe < night || strings.Count(text, "How far") != 1 {
		t.Errorf("the forecast reads:\n%s", text)
	}
	out.Reset()
	var outlooks []satline.Outlook
	if status := run([]string{"-demo", firstDemo, "-tonight", "60 °F", "-json"}, nil, &out,
		&problems); status != 0 ||
		json.Unmarshal([]byte(out.String()), &outlooks) != nil ||
		len(outlooks) != 2 ||
		len(outlooks[1].Believe) == 0 {
		t.Errorf("as JSON: status %d, %s%s", status, problems.String(), out.String())
	}
	if status := run([]string{"-demo", firstDemo, "-tonight", "60 °F", "-html"}, nil, &out,
		&problems); status != 2 ||
		!strings.Contains(problems.String(), "-tonight") {
		t.Errorf("as a page: status %d, %s", status, problems.String())
	}
	problems.Reset()
	if status := run([]string{"-demo", firstDemo, "-tonight", "20 °F"}, nil, &out,
		&problems); status != 2 ||
		!strings.HasPrefix(problems.String(), "-tonight: ") {
		t.Errorf("too cold to forecast: status %d, %s", status, problems.String())
	}
	out.Reset()
	if status := run([]string{"-tonight", "60 °F", wetCoil(t)}, nil, &out,
		&problems); status != 0 ||
		!strings.Contains(out.String(), "How far to believe this") {
		t.Errorf("status %d, a wet coil:\n%s", status, out.String())
	}
}

// wetCoil is the file of the first demonstration with a wet outdoor coil.
func wetCoil(t *testing.T) string {
	t.Helper()
	doc, err := demos.ReadFile("demo/" + firstDemo + ".json")
	if err != nil {
		t.Fatal(err)
	}
	v, err := satline.DecodeVisit(doc)
	if err != nil {
		t.Fatal(err)
	}
	v.Conditions.CoilWet = true
	if doc, err = json.Marshal(v); err != nil {
		t.Fatal(err)
	}
	name := filepath.Join(t.TempDir(), "visit.json")
	if err := os.WriteFile(name, doc, 0o644); err != nil {
		t.Fatal(err)
	}
	return name
}
