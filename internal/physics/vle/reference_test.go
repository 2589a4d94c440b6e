package vle_test

import (
	"encoding/csv"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/internal/tool/verify"
)

var coolProp = verify.Source{
	Cite: "CoolProp 8.0.1dev (MIT licence), from the published equations of state",
	Kind: verify.Computed,
}

func readRows(t testing.TB, name string) [][]string {
	t.Helper()
	f, err := os.Open(filepath.Join("testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	return rows[1:]
}

func number(t testing.TB, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func relative(got, want float64) float64 { return math.Abs(got/want - 1) }

func pureSystem(t testing.TB, designation string) *vle.System {
	t.Helper()
	m, err := fluiddata.NewModel([]string{designation}, []float64{1})
	if err != nil {
		t.Fatal(err)
	}
	return vle.New(m)
}

// blendSystems is the blends of Standard 34 by designation.
func blendSystems(t testing.TB) (systems map[string]*vle.System, order []string) {
	t.Helper()
	systems = map[string]*vle.System{}
	for _, row := range readRows(t, "blends.csv") {
		var parts []string
		var moles []float64
		for _, part := range strings.Fields(row[1]) {
			name, percent, _ := strings.Cut(part, ":")
			f, ok := fluiddata.Pure(name)
			if !ok {
				t.Fatalf("no equation for %s", name)
			}
			parts = append(parts, name)
			moles = append(moles, number(t, percent)/f.MolarMass)
		}
		m, err := fluiddata.NewModel(parts, moles)
		if err != nil {
			t.Fatalf("%s: %v", row[0], err)
		}
		systems[row[0]] = vle.New(m)
		order = append(order, row[0])
	}
	return systems, order
}

// A worst keeps the largest deviation of a kind and where it was.
type worst struct {
	deviation float64
	where     string
}

func (w *worst) see(deviation float64, where string, args ...any) {
	if !(deviation <= w.deviation) { // a NaN is worst of all
		w.deviation, w.where = deviation, fmt.Sprintf(where, args...)
	}
}

func (w *worst) hold(t *testing.T, check string, tolerance float64) {
	t.Helper()
	verify.Value(
		t, coolProp, check+", largest deviation (at "+w.where+")", "relative", 0, w.deviation,
		tolerance,
	)
}

// selfContradicting says that a row of the reference has a vapor whose density
// and pressure do not belong together by the equation of state: the reference's
// solver gave up there. Equilibrium cannot hold at such a row.
func selfContradicting(m *helmholtz.Model, temp, p, rhoVapor float64) bool {
	q, _ := m.Pressure(temp, rhoVapor)
	return relative(q, p) > 1e-7
}

func TestPureSaturationAgainstReference(t *testing.T) {
	var pressure, liquid, vapor, enthalpy, entropy worst
	compared, contradicting := 0, 0
	for _, row := range readRows(t, "saturation.csv") {
		f, ok := fluiddata.Pure(row[0])
		if !ok {
			continue
		}
		s := pureSystem(t, row[0])
		m := s.Model()
		temp := number(t, row[1])
		pt, err := s.BubbleT(temp)
		if err != nil {
			t.Errorf("%s at %g K: %v", row[0], temp, err)
			continue
		}
		if selfContradicting(m, temp, number(t, row[2]), number(t, row[5])/f.MolarMass) {
			contradicting++
			if row[0] != "R-114" {
				t.Errorf("%s at %g K: the reference contradicts itself", row[0], temp)
			}
			continue
		}
		compared++
		l, v := m.At(temp, pt.RhoLiquid), m.At(temp, pt.RhoVapor)
		pressure.see(relative(pt.P, number(t, row[2])), "%s, %g K", row[0], temp)
		liquid.see(relative(pt.RhoLiquid*f.MolarMass, number(t, row[4])), "%s, %g K", row[0], temp)
		vapor.see(relative(pt.RhoVapor*f.MolarMass, number(t, row[5])), "%s, %g K", row[0], temp)
		enthalpy.see(relative((v.H-l.H)/f.MolarMass, number(t, row[6])), "%s, %g K", row[0], temp)
		entropy.see(relative((v.S-l.S)/f.MolarMass, number(t, row[7])), "%s, %g K", row[0], temp)
	}
	if contradicting != 3 || compared != 448 {
		t.Errorf(
			"%d rows compared, %d of the reference contradict themselves", compared, contradicting,
		)
	}
	pressure.hold(t, "saturation pressure of pure fluids", 1e-8)
	liquid.hold(t, "saturated liquid density of pure fluids", 1e-8)
	vapor.hold(t, "saturated vapor density of pure fluids", 1e-8)
	enthalpy.hold(t, "enthalpy of vaporization of pure fluids", 1e-8)
	entropy.hold(t, "entropy of vaporization of pure fluids", 1e-8)
}
