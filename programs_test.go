package satline_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
)

// program builds one of testdata/programs and returns a function that runs it.
func program(t *testing.T, name string) func(in []byte, args ...string) string {
	t.Helper()
	if testing.Short() {
		t.Skip("SKIPPED in short mode: it builds a program")
	}
	file := filepath.Join(t.TempDir(), name+".exe")
	build := exec.Command("go", "build", "-o", file, "./testdata/programs/"+name)
	if out, err := build.CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	return func(in []byte, args ...string) string {
		run := exec.Command(file, args...)
		run.Stdin = bytes.NewReader(in)
		out, err := run.CombinedOutput()
		if err != nil {
			t.Fatalf("%s: %v\n%s", name, err, out)
		}
		return string(out)
	}
}

func keptVisits(t *testing.T) []satline.Visit {
	t.Helper()
	files, err := filepath.Glob("testdata/visits/*.json")
	if err != nil || len(files) == 0 {
		t.Fatal("no visits", err)
	}
	var out []satline.Visit
	for _, file := range files {
		doc, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		v, err := satline.DecodeVisit(doc)
		if err != nil {
			t.Fatal(file, err)
		}
		out = append(out, v)
	}
	return out
}

// A program that reads codes and quantities says the same whatever language the assessment
// speaks, and says something of every visit.
func TestOwnWords(t *testing.T) {
	run := program(t, "ownwords")
	for _, v := range keptVisits(t) {
		var said [2]string
		for i, language := range []satline.Language{satline.English, satline.Spanish} {
			v.Language = language
			in, err := json.Marshal(v)
			if err != nil {
				t.Fatal(err)
			}
			said[i] = run(in)
		}
		if d := cmp.Diff(said[0], said[1]); d != "" || said[0] == "" {
			t.Errorf("%s: (-en +es):\n%s", v.Title, d)
		}
	}
}

// Twenty minutes of gauges come to a verdict and to a visit that is read back; a sensor that
// sends nonsense and a line that is no sample are told and do no harm.
func TestLiveSession(t *testing.T) {
	run := program(t, "livesession")
	rng := rand.New(rand.NewPCG(4, 2))
	var in bytes.Buffer
	for at := time.Duration(0); at < 20*time.Minute; at += 2 * time.Second {
		fmt.Fprintf(
			&in,
			`{"at": %q, "liquidPressure": "%.1f psig", "liquidLine": "%.2f °F", `+
				`"suctionPressure": "%.1f psig", "suctionLine": "%.2f °F", `+
				`"outdoorDryBulb": "88 °F"}`+"\n",
			at,
			320+rng.NormFloat64()/2,
			96+rng.NormFloat64()/5,
			117+rng.NormFloat64()/2,
			56+rng.NormFloat64()/5,
		)
	}
	in.WriteString(`{"at": "20m1s", "liquidLine": "900 °F"}` + "\nnot a sample\n")
	out := run(in.Bytes())
	lines := strings.Split(strings.TrimSpace(out), "\n")
	kept, err := satline.DecodeVisit([]byte(lines[len(lines)-1]))
	if err != nil || len(kept.Log) == 0 {
		t.Fatalf("%v: %d entries\n%s", err, len(kept.Log), out)
	}
	if !strings.Contains(out, string(satline.SensorLost)) || !strings.Contains(out, "not taken: ") {
		t.Errorf("nothing is said of what was not taken:\n%s", out)
	}
	if !strings.Contains(out, string(satline.ChargeInBand)) {
		t.Errorf("no verdict:\n%s", out)
	}
}

// Ten thousand visits, the kept ones with their readings shaken, are all counted, and the
// wrong lines among them named with each field to mend.
func TestImporter(t *testing.T) {
	run := program(t, "importer")
	visits := slices.DeleteFunc(keptVisits(t), func(v satline.Visit) bool {
		a, err := satline.Assess(v) // cold rooms take a hundred times as long
		return err != nil || a.Mode.Mode != satline.Cooling
	})
	rng := rand.New(rand.NewPCG(7, 7))
	var in bytes.Buffer
	const lines = 10000
	wrong := 0
	for i := range lines {
		v := visits[rng.IntN(len(visits))]
		v.Log, v.Moves, v.House = nil, nil, nil
		if p := v.Readings.SuctionPressure.Get(); p != nil {
			p.Value += quantity.PSIG(3 * rng.NormFloat64())
			v.Readings.SuctionPressure = satline.ReadingOf(*p)
		}
		if i%100 == 99 {
			v.Equipment.Refrigerant, v.Equipment.Metering = "R-0", 0
			wrong++
		}
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		in.Write(append(text, '\n'))
	}
	sum, named := 0, 0
	for line := range strings.Lines(run(in.Bytes())) {
		var n int
		var outcome string
		if _, err := fmt.Sscanf(line, "%d %s", &n, &outcome); err == nil {
			sum += n
		} else if strings.HasPrefix(line, "line ") {
			named++
		}
	}
	if sum+wrong != lines || named != wrong {
		t.Errorf("%d counted and %d named of %d with %d wrong", sum, named, lines, wrong)
	}
}

// A card in two systems holds the same pressures, as that of the refrigerant itself.
func TestPTCard(t *testing.T) {
	out := program(t, "ptcard")(nil, "R-454B", "5200 ft")
	var rows int
	for line := range strings.Lines(out) {
		var f, c, bubbleIP, dewIP, bubbleSI, dewSI float64
		if _, err := fmt.Sscanf(line, "%f °F %f °C %f psig %f psig %f kPag %f kPag",
			&f, &c, &bubbleIP, &dewIP, &bubbleSI, &dewSI); err != nil {
			continue
		}
		rows++
		for _, p := range [][2]float64{{bubbleIP, bubbleSI}, {dewIP, dewSI}} {
			if d := p[0]*6.894757 - p[1]; d < -0.9 || d > 0.9 {
				t.Errorf("%.0f °F: %.1f psig beside %.1f kPag", f, p[0], p[1])
			}
		}
	}
	if rows != 9 {
		t.Errorf("%d rows:\n%s", rows, out)
	}
}

// House rules stand in the record under their own name, below the label.
func TestHouseRules(t *testing.T) {
	run := program(t, "houserules")
	for _, c := range []struct {
		visit string
		args  []string
		want  string
	}{
		{"liquid-line-restricted", nil, "kinked flare behind the wall unit"},
		{"liquid-line-restricted", nil,
			"by the unit's label, band by Larch & Daughters, field manual 4"},
		{"electronic-valve-overcharged", []string{"Call first"},
			"Larch & Daughters, field manual 4: Call first"},
	} {
		in, err := os.ReadFile("testdata/visits/" + c.visit + ".json")
		if err != nil {
			t.Fatal(err)
		}
		if out := run(in, c.args...); !strings.Contains(out, c.want) {
			t.Errorf("%s: no %q in\n%s", c.visit, c.want, out)
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
