package refrigerant

import (
	"bufio"
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/internal/verify"
	"github.com/satline/satline/quantity"
)

// A referenceRow is a line of numbers under its heading.
type referenceRow struct {
	heading []string
	v       []float64
}

// readReference reads a file of testdata; see the head of the file.
func readReference(t *testing.T, name string) []referenceRow {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	var rows []referenceRow
	var heading []string
	for in := bufio.NewScanner(f); in.Scan(); {
		fields := strings.Fields(in.Text())
		switch {
		case len(fields) == 0 || fields[0] == "#":
		case strings.HasPrefix(fields[0], "R-"):
			heading = fields
		default:
			row := referenceRow{heading: heading}
			for _, s := range fields {
				v, err := strconv.ParseFloat(s, 64)
				if err != nil {
					t.Fatal(err)
				}
				row.v = append(row.v, v)
			}
			rows = append(rows, row)
		}
	}
	return rows
}

var independent = verify.Source{
	Cite: "the same published Helmholtz models evaluated by an independent library, CoolProp 8.0.1dev; see testdata",
	Kind: verify.Computed,
}

// group sorts refrigerants by how far two implementations should agree.
func group(r *Refrigerant) string {
	if r.Pure() {
		return "pure fluids"
	}
	if estimated, _ := r.Estimated(); estimated {
		return "blends with an estimated pair"
	}
	return "blends with published fits"
}

// A tally keeps the worst deviation of each check.
type tally map[string]struct {
	deviation float64
	where     string
}

func (w tally) add(check string, got, want float64, where string) {
	if d := math.Abs(got/want - 1); !(d <= w[check].deviation) {
		w[check] = struct {
			deviation float64
			where     string
		}{d, where}
	}
}

func TestSaturationAgainstReference(t *testing.T) {
	w := tally{}
	exact := map[string]*Refrigerant{}
	for _, row := range readReference(t, "saturation.txt") {
		r := exact[row.heading[0]]
		if r == nil {
			r = untabulated(t, mustLookup(t, row.heading[0]))
			exact[row.heading[0]] = r
		}
		temp := quantity.Kelvin(row.v[0])
		l, err := r.SaturatedLiquid(temp)
		if err != nil {
			t.Error(err)
			continue
		}
		v, err := r.SaturatedVapor(temp)
		if err != nil {
			t.Error(err)
			continue
		}
		where := fmt.Sprintf("%v at %v K", r, row.v[0])
		g := group(r)
		w.add(g+": bubble pressure", float64(l.Pressure), row.v[1], where)
		w.add(g+": dew pressure", float64(v.Pressure), row.v[2], where)
		w.add(g+": bubble density", float64(l.Density), row.v[3], where)
		w.add(g+": dew density", float64(v.Density), row.v[4], where)
		w.add(g+": dew less bubble enthalpy", float64(v.Enthalpy-l.Enthalpy), row.v[5], where)
		w.add(g+": dew less bubble entropy", float64(v.Entropy-l.Entropy), row.v[6], where)
	}
	for check, worst := range w {
		t.Logf("%-55s %.2g  %s", check, worst.deviation, worst.where)
	}
}

func TestSinglePhaseAgainstReference(t *testing.T) {
	w := tally{}
	for _, row := range readReference(t, "single_phase.txt") {
		r := mustLookup(t, row.heading[0])
		temp, p := quantity.Kelvin(row.v[0]), quantity.Pascals(row.v[1])
		s, err := r.State(p, temp)
		if err != nil {
			t.Error(err)
			continue
		}
		where := fmt.Sprintf("%v %v at %v K, %v Pa", r, row.heading[1], row.v[0], row.v[1])
		if string(s.Phase) != row.heading[1] {
			t.Errorf("%s: %v", where, s.Phase)
		}
		g := group(r) + ", " + row.heading[1]
		w.add(g+": density", float64(s.Density), row.v[2], where)
		w.add(g+": cp", float64(s.Cp), row.v[5], where)
		w.add(g+": speed of sound", float64(s.SpeedOfSound), row.v[6], where)
	}
	for check, worst := range w {
		t.Logf("%-55s %.2g  %s", check, worst.deviation, worst.where)
	}
}
