package refrigerant

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/quantity"
)

// untabulated returns r without its table: every answer is solved from the
// equation of state.
func untabulated(t testing.TB, r *Refrigerant) *Refrigerant {
	t.Helper()
	b, err := NewBlend(r.designation, r.parts)
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// What the tables promise against the equation of state, everywhere.
const (
	tableKelvin   = 1e-3
	tableRelative = 2e-5
	// The vapor pressure of a pure fluid is held more closely.
	tablePurePressure = 1.5e-6
	// What an enthalpy error is measured against, J/kg: the datum is arbitrary, and
	// a relative error where h is zero has no meaning.
	enthalpyScale = 200e3
)

// Between its nodes every table keeps to the equation.
func TestTablesAgainstEquation(t *testing.T) {
	var worst [int(table.Curves) + int(table.Edges)]struct {
		error float64
		where string
	}
	note := func(k int, e float64, r *Refrigerant, at float64) {
		if e > worst[k].error {
			worst[k].error, worst[k].where = e, r.designation+" at "+quantity.Temperature(at).
				String()
		}
	}
	for _, r := range sample(All()) {
		s := r.table()
		if s == &noTable {
			t.Errorf("%v has no table", r)
			continue
		}
		exact := untabulated(t, r)
		// Incommensurate with the cells, so that places in them vary.
		const points = 97
		for i := range points {
			// Denser toward the critical point, like the nodes.
			u := (float64(i) + 0.5) / points
			at := s.High - (s.High-s.Low)*(1-u)*(1-u)
			for e := range table.Edges {
				v, err := exact.solveSaturation(e, quantity.Temperature(at))
				if err != nil {
					t.Fatalf("%v: %v", r, err)
				}
				for c, want := range map[table.Curve]float64{
					table.BubblePressure: v.pressure, table.BubbleDensity: v.density,
					table.BubbleEnthalpy: v.enthalpy, table.BubbleEntropy: v.entropy,
				} {
					c += table.Curve(e)
					got, ok := s.At(c, at)
					if !ok {
						t.Fatalf("%v: no %v at %v K", r, c, at)
					}
					size := math.Abs(want)
					switch c {
					case table.BubbleEnthalpy, table.DewEnthalpy:
						size = enthalpyScale
					case table.BubbleEntropy, table.DewEntropy:
						size = enthalpyScale / at
					}
					off := math.Abs(got-want) / size
					if r.Pure() && c == table.BubblePressure && off > tablePurePressure {
						t.Errorf("%v: vapor pressure at %v K is off by %.2g", r, at, off)
					}
					note(int(c), off, r, at)
				}
				if i%8 == 3 && v.pressure < float64(r.Critical().Pressure) {
					// The other way round, the solver finds the same point.
					if w, err := exact.solveSaturationAt(e,
						quantity.Pressure(v.pressure)); err != nil ||
						math.Abs(w.temperature-at) > 1e-6 {
						t.Errorf(
							"%v: edge %d has %v Pa at %v K, and %v K at that, %v", r, e, v.pressure,
							at, w.temperature, err,
						)
					}
				}
				if v.pressure > s.LowPressure(e) {
					got, ok := s.Temperature(e, v.pressure)
					if !ok {
						t.Fatalf("%v: no temperature at %v Pa", r, v.pressure)
					}
					note(int(table.Curves)+int(e), math.Abs(got-at), r, at)
				}
			}
		}
	}
	for k, w := range worst {
		limit, name := tableRelative, "curve"
		if k >= int(table.Curves) {
			limit, name = tableKelvin, "temperature"
		}
		t.Logf("%s %d: worst %.2g, %s", name, k, w.error, w.where)
		if w.error > limit {
			t.Errorf("%s %d is off by %.2g, %s", name, k, w.error, w.where)
		}
	}
}

// All tables together are a small part of a binary.
func TestTablesAreSmall(t *testing.T) {
	if size := len(stored) + len(storedDomes); size > 1<<20 {
		t.Errorf("the tables take %d bytes, want less than 1 MiB", size)
	}
}
