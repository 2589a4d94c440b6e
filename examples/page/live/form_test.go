package live

import (
	"encoding/json"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/internal/tool/jsonschema"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
)

// every is each field of a form by its path, those of lists with a star.
func every(f Form) map[string]Field {
	out := map[string]Field{}
	all := append(slices.Clone(f.Groups), f.Tasks...)
	for _, task := range f.Tasks {
		all = append(all, task.Parts...)
	}
	for _, g := range all {
		for _, field := range g.Fields {
			out[field.Path] = field
		}
		for _, l := range g.Lists {
			for _, field := range l.Fields {
				out[field.Path] = field
			}
			for _, within := range l.Lists {
				for _, field := range within.Fields {
					out[field.Path] = field
				}
			}
		}
	}
	return out
}

// Every value that the schema of a visit knows can be entered: every reading, condition and
// field of the label, whatever is added to them later.
func TestEveryFieldOfTheSchemaIsReachable(t *testing.T) {
	text, err := os.ReadFile("../../../testdata/schema/visit.schema.json")
	if err != nil {
		t.Fatal(err)
	}
	root, err := jsonschema.Parse(text)
	if err != nil {
		t.Fatal(err)
	}
	fields, seen := every(NewForm(satline.English, quantity.IP)), 0
	resolve := jsonschema.InDefs(root)
	var walk func(s *jsonschema.Schema, path string)
	walk = func(s *jsonschema.Schema, path string) {
		if slices.Contains(elsewhere, path) {
			return
		}
		if s.Ref != "" {
			s = resolve(s.Ref)
		}
		switch s.Type {
		case "object":
			for _, p := range s.Properties {
				walk(p.Schema, strings.TrimPrefix(path+"."+p.Name, "."))
			}
		case "array":
			walk(s.Items, path+".*")
		default:
			seen++
			field, ok := fields[path]
			if !ok {
				t.Errorf("%s cannot be entered", path)
			}
			for _, value := range s.Enum {
				if value != "not stated" && field.Kind == "choice" && !slices.ContainsFunc(
					field.Options, func(o Option) bool { return o.Value == value },
				) {
					t.Errorf("%s: %q cannot be chosen", path, value)
				}
			}
		}
	}
	walk(root, "")
	if seen < 50 {
		t.Errorf("only %d values are in the schema", seen)
	}
}

// Every look has its two answers, and every quantity its units in both systems.
func TestEveryLookAndUnitIsReachable(t *testing.T) {
	f := NewForm(satline.English, quantity.IP)
	if want := satline.Looks(satline.English, quantity.IP); len(f.Looks) != len(want) {
		t.Errorf("%d looks of %d", len(f.Looks), len(want))
	}
	for _, field := range append([]Field{f.Move}, fieldsOf(every(f))...) {
		units, ok := f.Quantities[field.Kind]
		if slices.Contains([]string{"text", "yes", "either", "choice", "number"}, field.Kind) {
			continue
		}
		if !ok {
			t.Errorf("%s: no units of %s", field.Path, field.Kind)
		}
		for _, sys := range []quantity.System{quantity.IP, quantity.SI} {
			symbols := []string{}
			for _, u := range units[sys] {
				symbols = append(symbols, u.Symbol)
				m, _ := measureOf(field.Kind)
				got, err := m.parse("2 " + u.Symbol)
				if err != nil || !near(got, u.Zero+2*u.Scale) {
					t.Errorf("2 %s is %v (%v), by its scale %v", u.Symbol, got, err,
						u.Zero+2*u.Scale)
				}
			}
			if want := field.Unit[sys]; want != "" && !slices.Contains(symbols, want) {
				t.Errorf("%s begins in %s, which is none of %q", field.Path, want, symbols)
			}
		}
	}
}

func fieldsOf(m map[string]Field) (out []Field) {
	for _, f := range m {
		out = append(out, f)
	}
	return out
}

// The page has words of its own for everything that it names, in each language.
func TestWords(t *testing.T) {
	english := catalogs[satline.English]
	for _, l := range satline.Languages() {
		for code, text := range english {
			other, ok := catalogs[l][code]
			if !ok {
				t.Errorf("%s: no words for %s", l, code)
			}
			for _, part := range strings.Split(text, "{")[1:] {
				name, _, _ := strings.Cut(part, "}")
				if !strings.Contains(other, "{"+name+"}") {
					t.Errorf("%s: %s leaves out {%s}", l, code, name)
				}
			}
		}
		if len(catalogs[l]) != len(english) {
			t.Errorf("%s has %d words, English %d", l, len(catalogs[l]), len(english))
		}
		fields := every(NewForm(l, quantity.IP))
		for path, field := range fields {
			for _, part := range strings.Split(path, ".") {
				part = spaced(part)
				// Some words are the same in both languages, or begin so.
				same := slices.Contains([]string{"barometer", "refrigerant", "restrictor", "seer",
					"seer2"}, part)
				if l == satline.Spanish && !same &&
					strings.Contains(strings.ToLower(field.Label), part) {
					t.Errorf("%s: no words for %s in %s", l, path, field.Label)
				}
			}
			for _, o := range field.Options {
				if strings.HasSuffix(o.Text, "."+o.Value) {
					t.Errorf("%s: no words for %s", l, o.Text)
				}
			}
		}
	}
}

// The library is asked what may be below zero.
func TestSigned(t *testing.T) {
	fields := every(NewForm(satline.English, quantity.IP))
	for path, want := range map[string]bool{
		"readings.suctionPressure": true, "readings.outdoorDryBulb": true,
		"readings.airflow": false, "readings.power": false, "site.elevation": true,
		"equipment.nominalCapacity": false, "task.frozen.outdoors": true,
	} {
		if fields[path].Signed != want {
			t.Errorf("%s: signed %v", path, !want)
		}
	}
}

// Bores and pipes are not measured in feet.
func TestUsualUnits(t *testing.T) {
	fields := every(NewForm(satline.English, quantity.IP))
	for _, path := range []string{
		"equipment.restrictor", "equipment.label.restrictor", "equipment.lineSet.liquidDiameter",
	} {
		if u := fields[path].Unit; u[quantity.IP] != "in" || u[quantity.SI] != "mm" {
			t.Errorf("%s: %v", path, u)
		}
	}
}

func TestRead(t *testing.T) {
	for _, c := range []struct {
		path, kind, text, unit string
		typing                 bool
		want                   Reading
	}{
		{"readings.suctionLine", "Temperature", "21.5 C", "°F", true,
			Reading{Unit: "°C", Number: "21.5"}},
		{"readings.suctionPressure", "GaugePressure", "8.1 barg", "psig", true,
			Reading{Unit: "barg", Number: "8.1"}},
		{"readings.suctionPressure", "GaugePressure", "7.2 bar", "kPag", false,
			Reading{Unit: "barg", Number: "7.2"}},
		{"equipment.restrictor", "Length", "0.057 in", "in", false,
			Reading{Unit: "in", Number: "0.057"}},
		{"readings.suctionPressure", "GaugePressure", "−5 psig", "psig", false,
			Reading{Unit: "psig", Number: "-5"}},
		{"conditions.running", "Duration", "20 min", "min", false,
			Reading{Unit: "min", Number: "20"}},
		{"readings.suctionLine", "Temperature", "6x °F", "°F", true,
			Reading{Problem: "Not a number in °F"}},
		{"readings.suctionLine", "Temperature", "900 °F", "°F", true,
			Reading{Unit: "°F", Number: "900", Problem: "From -76 °F to 212 °F"}},
		{"readings.suctionLine", "Temperature", "100.1 °C", "°C", false,
			Reading{Unit: "°C", Number: "100.1", Problem: "From -60 °C to 100 °C"}},
		{"readings.airflow", "VolumeFlow", "1 CFM", "CFM", true, Reading{Unit: "CFM", Number: "1"}},
		{"readings.airflow", "VolumeFlow", "1 CFM", "CFM", false,
			Reading{Unit: "CFM", Number: "1", Problem: "From 20 CFM to 200000 CFM"}},
	} {
		if got := Read(Typed{Path: c.path, Kind: c.kind, Text: c.text, Unit: c.unit,
			Typing: c.typing}); got != c.want {
			t.Errorf("%s %q: %+v, want %+v", c.path, c.text, got, c.want)
		}
	}
}

// The range of a field is written as its language writes numbers.
func TestRangeInSpanish(t *testing.T) {
	got := Read(Typed{
		Path: "equipment.restrictor", Kind: "Length", Text: "40 in", Unit: "in",
		Language: satline.Spanish,
	})
	if comma := regexp.MustCompile(`[0-9],[0-9]`); !comma.MatchString(got.Problem) ||
		regexp.MustCompile(`[0-9]\.[0-9]`).MatchString(got.Problem) {
		t.Errorf("%+v", got)
	}
}

// Each task answers what it asks for; the figures are invented.
func TestTasks(t *testing.T) {
	visit := demo(t)
	machine := []byte(`{"equipment": {"refrigerant": "R-410A", "metering": "TXV",
		"label": {"charge": "6 lb 4 oz", "factoryLineSet": "15 ft"},
		"lineSet": {"length": "40 ft", "liquidDiameter": "3/8 in", "device": "indoors"}}}`)
	for _, c := range []struct {
		code, input string
		visit       []byte
		lines       int
	}{
		{"frozen", `{}`, visit, 8},
		{"forecast", `{"outdoors": "60 °F"}`, visit, 3},
		{"weighin", `{}`, machine, 2},
		{"recovery", `{}`, machine, 1},
		{"cylinder", `{"waterCapacity": "47.7 lb", "tare": "28 lb", "gross": "40 lb"}`, machine, 2},
		{"nitrogen", `{"start": "500 psig", "startGas": "90 °F", "held": "1 h",
			"end": "490 psig", "endGas": "80 °F"}`, machine, 1},
		{"vacuum", `{"readings": [{"at": "0 min", "value": "300 micron"},
			{"at": "5 min", "value": "310 micron"},
			{"at": "10 min", "value": "312 micron"}]}`, nil, 1},
		{"electrical", `{}`, []byte(`{"electrical": {"nameplate": {"voltage": "230 V"},
			"control": {"transformer": "0 V"}, "compressor": {"state": "silent"}}}`), 1},
		{"job", `{"task": "maintain", "technician": "Invented",
			"checklist": [{"check": "filter-clean", "good": true}]}`, visit, 4},
	} {
		a := Perform(c.code, c.visit, []byte(`{"`+c.code+`": `+c.input+`}`))
		if a.Problem != "" || len(a.Lines) < c.lines {
			t.Errorf("%s: %+v", c.code, a)
		}
		for _, line := range append(a.Lines, a.Cautions...) {
			if strings.ContainsAny(line, "{}[]") || strings.HasPrefix(line, "page.") {
				t.Errorf("%s says %q", c.code, line)
			}
		}
		t.Logf("%s: %q", c.code, a.Lines)
	}
	for _, code := range []string{"electrical", "frozen", "cylinder", "nitrogen", "weighin",
		"vacuum", "recovery"} {
		for _, l := range satline.Languages() {
			doc, err := json.Marshal(map[string]any{"language": l})
			if err != nil {
				t.Fatal(err)
			}
			if a := Perform(code, doc, []byte(`{}`)); a.Problem == "" && len(a.Lines) == 0 {
				t.Errorf("%s of nothing: %+v", code, a)
			}
		}
	}
}

// What moved in or out of a cylinder is what the scale showed before and after; the figures
// are invented.
func TestCylinderBeforeAndAfter(t *testing.T) {
	machine := []byte(`{"equipment": {"refrigerant": "R-410A", "metering": "TXV"}}`)
	says := func(more string) string {
		a := Perform("cylinder", machine, []byte(`{"cylinder": {"waterCapacity": "47.7 lb",
			"tare": "28 lb", "gross": "40 lb"`+more+`}}`))
		if a.Problem != "" {
			t.Error(a.Problem)
		}
		return strings.Join(a.Lines, "; ")
	}
	before, after := says(""), says(`, "after": "45 lb"`)
	for text, want := range map[string]string{
		after: "5 lb 0.0 oz went in", says(`, "after": "38 lb"`): "2 lb 0.0 oz came out",
		says(`, "kind": "disposable"`): "never",
	} {
		if !strings.Contains(strings.ReplaceAll(text, "\u00a0", " "), want) {
			t.Errorf("%q, want %q", text, want)
		}
	}
	if before[:strings.IndexByte(before, ';')] == after[:strings.IndexByte(after, ';')] {
		t.Errorf("as much may go in after as before: %s", after)
	}
	for more, want := range map[string]quantity.Mass{"": 0,
		`, "after": "38 lb"`: quantity.Pounds(38)} {
		o, err := order(satline.Visit{}, inputsOf([]byte(`{"job": {"task": "maintain"},
			"cylinder": {"waterCapacity": "47.7 lb", "tare": "28 lb", "gross": "40 lb"`+more+`}}`)))
		if err != nil {
			t.Fatal(err)
		}
		if c := o.Cylinders[0]; c.Before != quantity.Pounds(40) || c.After != want {
			t.Errorf("%s: before %v, after %v", more, c.Before, c.After)
		}
	}
}

// What the page opens for a step is there to be opened.
func TestStepsLeadSomewhere(t *testing.T) {
	fields := every(NewForm(satline.English, quantity.IP))
	for code, paths := range asks {
		says := fact.New(code, fact.Of("chance", fact.Share(0.5)))
		if satline.Say(says, satline.English, quantity.IP) == says.String() {
			t.Errorf("%s is no step", code)
		}
		for _, path := range paths {
			if _, ok := fields[path]; !ok {
				t.Errorf("%s asks for %s, which is no field", code, path)
			}
		}
	}
	for code, name := range tasksOf {
		if !slices.ContainsFunc(tasks, func(x task) bool { return x.code == name }) {
			t.Errorf("%s leads to %s, which is no task", code, name)
		}
	}
	for _, path := range prefixed("readings.", core) {
		if _, ok := fields[path]; !ok {
			t.Errorf("%s is no reading", path)
		}
	}
}

// The words that the page asks for by name are there.
func TestScriptAsksForWordsThatAreThere(t *testing.T) {
	files, err := filepath.Glob("../build/src/page/*.js")
	if err != nil || len(files) == 0 {
		t.Fatal(err)
	}
	asked := regexp.MustCompile(`(?:\bt\(|data-word=)"([a-z.A-Z]+[a-z])"`)
	seen := 0
	for _, file := range append(files, "../build/src/page.html") {
		script, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		for _, m := range asked.FindAllStringSubmatch(string(script), -1) {
			seen++
			if _, ok := catalogs[satline.English][m[1]]; !ok {
				t.Errorf("%s asks for the words %q", file, m[1])
			}
		}
	}
	if seen < 40 {
		t.Errorf("only %d words are asked for", seen)
	}
}

// A job that is named is recorded as one; else the visit is.
func TestRecord(t *testing.T) {
	day := time.Date(2026, 7, 14, 9, 0, 0, 0, time.UTC)
	for inputs, want := range map[string]string{
		`{}`: "<!DOCTYPE html>",
		`{"job": {"task": "maintain", "technician": "Ines Invented",
			"license": "none"}}`: "Ines Invented",
	} {
		page, err := Record(demo(t), []byte(inputs), day)
		if err != nil || !strings.Contains(page, want) {
			t.Errorf("%s: %v, %.200s", inputs, err, page)
		}
	}
}
