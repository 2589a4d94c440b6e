package vle_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/vle"
)

// drawSystem is a pure fluid, a blend of Standard 34, or any mixture of what
// Standard 34's blends are made of.
func drawSystem(t *rapid.T, systems map[string]*vle.System, order []string) (string, *vle.System) {
	switch rapid.IntRange(0, 2).Draw(t, "kind") {
	case 0:
		f := rapid.SampledFrom(fluiddata.All()).Draw(t, "fluid")
		return f.Designation, pureSystemQuiet(f.Designation)
	case 1:
		name := rapid.SampledFrom(order).Draw(t, "blend")
		return name, systems[name]
	}
	s := drawMixture(t)
	return "mixture", s
}

// drawMixture is any composition of two to five common components.
func drawMixture(t *rapid.T) *vle.System {
	common := []string{
		"R-32", "R-125", "R-134a", "R-143a", "R-152a", "R-22", "R-290", "R-600a", "R-600",
		"R-1234yf", "R-1234ze(E)", "R-227ea", "R-744", "R-124", "R-142b", "R-218", "R-1270",
		"R-E170",
	}
	var parts []string
	var x []float64
	n := rapid.IntRange(2, 5).Draw(t, "components")
	order := make([]int, len(common))
	for i := range order {
		order[i] = i
	}
	for _, i := range rapid.Permutation(order).Draw(t, "which")[:n] {
		parts = append(parts, common[i])
		x = append(x, rapid.Float64Range(0.02, 1).Draw(t, "x"))
	}
	m, err := fluiddata.NewModel(parts, x)
	if err != nil {
		t.Fatal(err)
	}
	return vle.New(m)
}

// Whatever state is made from pressure and temperature or vapor fraction, its
// enthalpy and its entropy lead back to it.
func TestFlashesLeadBack(t *testing.T) {
	systems, order := blendSystems(t)
	rapid.Check(t, func(t *rapid.T) {
		name, s := drawSystem(t, systems, order)
		c, err := s.Critical()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		low := 0.63 * c.T
		if s.Model().Components() == 1 {
			low = math.Max(low, s.Model().Fluid(0).TripleT)
		}
		// Some made-up mixtures have two liquids in the cold; no blend may.
		skip := func(err error) {
			if name == "mixture" && err == vle.ErrTwoLiquids {
				t.Skip(err)
			}
		}
		cold, err := s.BubbleT(low)
		skip(err)
		if err != nil {
			t.Fatalf("%s at %g K: %v", name, low, err)
		}
		p := math.Exp(rapid.Float64Range(math.Log(cold.P), math.Log(0.9*c.P)).Draw(t, "ln p"))
		b, err1 := s.BubbleP(p)
		d, err2 := s.DewP(p)
		skip(err1)
		skip(err2)
		if err1 != nil || err2 != nil {
			t.Fatalf("%s at %g Pa: %v, %v", name, p, err1, err2)
		}
		temp := math.Max(low, b.T+rapid.Float64Range(-60, 60).Draw(t, "ΔT"))
		if d.T-b.T > 0.01 && rapid.Bool().Draw(t, "two phases") {
			temp = b.T + (d.T-b.T)*rapid.Float64Range(0.01, 0.99).Draw(t, "part")
		}
		if math.Abs(temp-b.T) < 1e-6*b.T || math.Abs(temp-d.T) < 1e-6*d.T {
			temp += 1e-3
		}
		f, err := s.FlashPT(p, temp)
		skip(err)
		if err != nil {
			t.Fatalf("%s at %g Pa, %g K: %v", name, p, temp, err)
		}
		want := vle.TwoPhase
		switch {
		case temp > d.T:
			want = vle.Vapor
		case temp < b.T:
			want = vle.Liquid
		}
		if f.Phase != want {
			t.Fatalf("%s at %g Pa, %g K: phase %d, want %d", name, p, temp, f.Phase, want)
		}
		checkBalance(t, name, s, &f)
		byH, err := s.FlashPH(p, f.H)
		if err != nil {
			t.Fatalf("%s at %g Pa, %g K from enthalpy: %v", name, p, temp, err)
		}
		byS, err := s.FlashPS(p, f.S)
		if err != nil {
			t.Fatalf("%s at %g Pa, %g K from entropy: %v", name, p, temp, err)
		}
		for _, g := range []*vle.Flash{&byH, &byS} {
			if g.Phase != f.Phase || relative(g.T, f.T) > 1e-8 ||
				math.Abs(g.VaporFraction-f.VaporFraction) > 1e-6 {
				t.Fatalf("%s at %g Pa, %g K: %+v leads back to %+v", name, p, temp, f, *g)
			}
		}
		if f.Phase == vle.TwoPhase {
			m := s.Model()
			part := f.VaporFraction * m.MolarMassOf(&f.Y) / m.MolarMass()
			byQ, err1 := s.FlashPQBetween(&b, &d, part)
			byH, err2 := s.FlashPHBetween(&b, &d, f.H)
			byS, err3 := s.FlashPSBetween(&b, &d, f.S)
			if err1 != nil || err2 != nil || err3 != nil {
				t.Fatalf(
					"%s at %g Pa, %g K between known points: %v, %v, %v", name, p, temp, err1, err2,
					err3,
				)
			}
			for _, g := range []*vle.Flash{&byQ, &byH, &byS} {
				if relative(g.T, f.T) > 1e-8 || math.Abs(g.VaporFraction-f.VaporFraction) > 1e-6 {
					t.Fatalf("%s at %g Pa, %g K: %+v leads back to %+v", name, p, temp, f, *g)
				}
			}
		}
	})
}

// checkBalance holds the moles of each component and, in two phases, the
// equality of fugacities.
func checkBalance(t rapid.TB, name string, s *vle.System, f *vle.Flash) {
	z := s.Model().MoleFractions()
	for i := range s.Model().Components() {
		sum := (1-f.VaporFraction)*f.X[i] + f.VaporFraction*f.Y[i]
		if math.Abs(sum-z[i]) > 1e-9 {
			t.Fatalf("%s: %g of component %d, put in %g", name, sum, i, z[i])
		}
	}
	if f.Phase == vle.TwoPhase {
		checkEquilibrium(
			t,
			name,
			s,
			vle.Point{
				T:         f.T,
				P:         f.P,
				RhoLiquid: f.Liquid.Rho,
				RhoVapor:  f.Vapor.Rho,
				X:         f.X,
				Y:         f.Y,
			},
		)
	}
}

// Pure fluids above the critical pressure have one density at each temperature.
func TestSupercriticalFlash(t *testing.T) {
	for _, f := range fluiddata.All() {
		s := pureSystem(t, f.Designation)
		for _, temp := range []float64{math.Max(0.7*f.CriticalT, f.TripleT), 0.95 * f.CriticalT,
			1.1 * f.CriticalT} {
			p := 1.5 * f.CriticalP
			a, err := s.FlashPT(p, temp)
			if err != nil {
				t.Errorf("%s at %g K: %v", f.Designation, temp, err)
				continue
			}
			b, err := s.FlashPH(p, a.H)
			if err != nil || relative(b.T, temp) > 1e-9 || a.Phase != b.Phase {
				t.Errorf("%s at %g K: leads back to %+v, %v", f.Designation, temp, b, err)
			}
			if want := temp > f.CriticalT; want != (a.Phase == vle.Supercritical) {
				t.Errorf("%s at %g K: phase %d", f.Designation, temp, a.Phase)
			}
		}
	}
}

func TestFlashOutOfRange(t *testing.T) {
	systems, _ := blendSystems(t)
	for _, s := range []*vle.System{pureSystem(t, "R-134a"), systems["R-454B"]} {
		for _, bad := range []float64{math.NaN(), math.Inf(1), 0, -5} {
			for name, err := range map[string]error{
				"p of FlashPT": second(s.FlashPT(bad, 300)),
				"T of FlashPT": second(s.FlashPT(1e6, bad)),
				"FlashPH":      second(s.FlashPH(bad, 0)), "FlashPS": second(s.FlashPS(bad, 0)),
				"BubbleT": second(s.BubbleT(bad)), "DewT": second(s.DewT(bad)),
				"BubbleP": second(s.BubbleP(bad)), "DewP": second(s.DewP(bad)),
				"Density": second(s.Density(bad, 1e6, vle.Vapor)),
			} {
				if err != vle.ErrInput {
					t.Errorf("%s with %g: %v", name, bad, err)
				}
			}
		}
		if _, err := s.FlashPH(1e6, 1e9); err != vle.ErrAboveRange {
			t.Errorf("far too much enthalpy: %v", err)
		}
		if _, err := s.FlashPH(1e6, -1e9); err != vle.ErrBelowRange {
			t.Errorf("far too little enthalpy: %v", err)
		}
	}
}

func second[T any](_ T, err error) error { return err }

// Where the boiling liquid would separate into two, a state between is refused
// for that, and only there.
func TestStateBesideTwoLiquids(t *testing.T) {
	m, err := fluiddata.NewModel([]string{"R-600", "R-32", "R-152a"}, []float64{0.2, 0.66, 0.14})
	if err != nil {
		t.Fatal(err)
	}
	s := vle.New(m)
	for p := 60e3; p < 500e3; p *= 1.1 {
		b, err := s.BubbleP(p)
		if err == vle.ErrTwoLiquids {
			continue
		}
		d, errDew := s.DewP(p)
		if err != nil || errDew != nil {
			t.Fatalf("%g Pa: %v, %v", p, err, errDew)
		}
		for temp := b.T + 0.1; temp < d.T; temp += 0.3 {
			f, err := s.FlashPT(p, temp)
			switch {
			case err == vle.ErrTwoLiquids:
				if temp > 250 {
					t.Errorf("%g Pa, %g K: %v, where it is warm", p, temp, err)
				}
			case err != nil:
				t.Errorf("%g Pa, %g K: %v", p, temp, err)
			default:
				checkBalance(t, "R-600/R-32/R-152a", s, &f)
			}
		}
	}
}
