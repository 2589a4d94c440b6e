package vle_test

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/internal/physics/vle"
)

// finite says that no float in a value, however deep, is NaN or infinite.
func finite(v reflect.Value) bool {
	switch v.Kind() {
	case reflect.Float64:
		f := v.Float()
		return !math.IsNaN(f) && !math.IsInf(f, 0)
	case reflect.Struct:
		for i := range v.NumField() {
			if !finite(v.Field(i)) {
				return false
			}
		}
	case reflect.Array:
		for i := range v.Len() {
			if !finite(v.Index(i)) {
				return false
			}
		}
	}
	return true
}

type failer interface{ Errorf(string, ...any) }

// askEverything holds that every answer is finite.
func askEverything(t failer, s *vle.System, temp, p, third float64) {
	check := func(what string, v any, err error) {
		if err == nil && !finite(reflect.ValueOf(v)) {
			t.Errorf(
				"%s of %s and %d others at %g, %g, %g: %+v", what, s.Model().Fluid(0).Designation,
				s.Model().Components()-1, temp, p, third, v,
			)
		}
	}
	c, err := s.Critical()
	check("critical point", c, err)
	pt, err := s.BubbleT(temp)
	check("BubbleT", pt, err)
	pt, err = s.DewT(temp)
	check("DewT", pt, err)
	pt, err = s.BubbleP(p)
	check("BubbleP", pt, err)
	pt, err = s.DewP(p)
	check("DewP", pt, err)
	for _, phase := range []vle.Phase{vle.Stable, vle.Vapor, vle.Liquid} {
		st, err := s.State(temp, p, phase)
		check("State", st, err)
	}
	fl, err := s.FlashPT(p, temp)
	check("FlashPT", fl, err)
	fl, err = s.FlashPH(p, third)
	check("FlashPH", fl, err)
	fl, err = s.FlashPS(p, third)
	check("FlashPS", fl, err)
}

// Any fluid or mixture and any numbers: an answer is finite, or there is an
// error.
func FuzzSolvers(f *testing.F) {
	f.Add(uint8(0), uint8(4), 280.0, 1e6, 250.0, 0.3, 0.5)
	f.Add(uint8(1), uint8(60), 350.0, 4.5e6, -3000.0, 0.3, 0.5)
	f.Add(uint8(2), uint8(9), 344.4, 4.9e6, 10.0, 1e-9, 1.0)
	f.Add(uint8(3), uint8(31), 1e-3, 1e-9, 1e9, 1e-3, 1e-3)
	f.Add(uint8(0), uint8(31), 647.096, 22.064e6, 322/0.018015268, 1.0, 1.0)
	f.Add(uint8(0), uint8(32), 304.1282, 7.3773e6, 467.6/0.0440098, 1.0, 1.0)
	f.Add(uint8(0), uint8(7), 5e4, 1e12, 1e5, 1.0, 1.0)
	fluids := fluiddata.All()
	f.Fuzz(func(t *testing.T, kind, which uint8, temp, p, third, x1, x2 float64) {
		n := int(kind)%5 + 1
		var parts []string
		var x []float64
		for k := range n {
			parts = append(parts, fluids[(int(which)+7*k)%len(fluids)].Designation)
			x = append(x, []float64{1, x1, x2, x1 * x2, 0.1}[k])
		}
		m, err := fluiddata.NewModel(parts, x)
		if err != nil {
			return
		}
		s := vle.New(m)
		askEverything(t, s, temp, p, third)
	})
}

// The same over many decades of all three numbers.
func TestEveryAnswerIsFinite(t *testing.T) {
	systems, order := blendSystems(t)
	rapid.Check(t, func(t *rapid.T) {
		_, s := drawSystem(t, systems, order)
		c, err := s.Critical()
		if err != nil {
			t.Skip(err)
		}
		wide := func(name string, middle float64) float64 {
			decades := rapid.SampledFrom([]float64{0.2, 1, 4, 12}).Draw(t, name+" decades")
			return middle * math.Pow(10, decades*rapid.Float64Range(-1, 1).Draw(t, name))
		}
		third := wide("third", 2e4)
		if rapid.Bool().Draw(t, "negative") {
			third = -third
		}
		askEverything(t, s, wide("T", c.T), wide("p", c.P), third)
	})
}

// A composition that is none is refused.
func FuzzComposition(f *testing.F) {
	f.Add(uint8(3), 0.5, 0.5)
	f.Add(uint8(3), 0.0, 1.0)
	f.Add(uint8(3), math.NaN(), 1.0)
	f.Add(uint8(3), math.Inf(1), 1.0)
	f.Add(uint8(3), 1e308, 1e308)
	fluids := fluiddata.All()
	f.Fuzz(func(t *testing.T, which uint8, x1, x2 float64) {
		a, b := fluids[int(which)%len(fluids)], fluids[(int(which)+1)%len(fluids)]
		m, err := helmholtz.NewModel([]*helmholtz.Fluid{a, b}, []float64{x1, x2}, nil)
		if err != nil {
			return
		}
		if sum := m.MoleFraction(0) + m.MoleFraction(1); math.Abs(sum-1) > 1e-12 ||
			!(m.MolarMass() > 0) {
			t.Errorf("%g and %g give %+v", x1, x2, m.MoleFractions())
		}
	})
}
