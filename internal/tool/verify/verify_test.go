package verify

import (
	"encoding/json"
	"os"
	"path/filepath"
	"testing"
)

// probe counts the failures a check reports.
type probe struct {
	testing.TB
	failures int
}

func (p *probe) Helper()                   {}
func (p *probe) Name() string              { return "TestProbe" }
func (p *probe) Errorf(_ string, _ ...any) { p.failures++ }

func TestValueFailsOutsideTolerance(t *testing.T) {
	t.Setenv(Directory, "")
	src := Source{Cite: "a source", Kind: CommonPractice}
	zero := 0.0
	for _, c := range []struct {
		name               string
		reference, got, in float64
		fails              int
	}{
		{"equal", 1, 1, 0, 0}, {"at the tolerance", 1, 1.5, 0.5, 0}, {"beyond", 1, 1.51, 0.5, 1},
		{"not a number", 1, zero / zero, 1e9, 1},
	} {
		p := &probe{TB: t}
		Value(p, src, c.name, "K", c.reference, c.got, c.in)
		if p.failures != c.fails {
			t.Errorf("%s: %d failures, want %d", c.name, p.failures, c.fails)
		}
	}
}

func TestRowsAreRecorded(t *testing.T) {
	dir := t.TempDir()
	t.Setenv(Directory, dir)
	Relative(t, Source{Cite: "arithmetic", Kind: Published}, "one", "m", 1, 1.000001, 1e-5)
	files, err := filepath.Glob(filepath.Join(dir, "*.jsonl"))
	if err != nil || len(files) != 1 {
		t.Fatalf("files %v, %v", files, err)
	}
	b, err := os.ReadFile(files[0])
	if err != nil {
		t.Fatal(err)
	}
	var row Row
	if err := json.Unmarshal(b, &row); err != nil {
		t.Fatal(err)
	}
	if row.Check != "one" || row.Tolerance != 1e-5 || row.Test != "TestRowsAreRecorded" {
		t.Errorf("row %+v", row)
	}
}
