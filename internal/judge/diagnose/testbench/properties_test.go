package testbench

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Estimates of transport properties against those of the ASHRAE Handbook Fundamentals 2017,
// chapter 30, saturated at 25 °C (from memory). Corresponding states promise some 15 %.
func TestTransport(t *testing.T) {
	for _, x := range []struct {
		designation                string
		muL, muV, kL, kV, sigma, p float64 // µPa s, µPa s, mW/(m K), mW/(m K), mN/m
	}{
		{designation: "R-134a", muL: 194.9, muV: 11.7, kL: 81.1, kV: 13.8, sigma: 8.03},
		{designation: "R-22", muL: 165.9, muV: 12.6, kL: 83.5, kV: 11.0, sigma: 8.08},
		{designation: "R-410A", muL: 118.0, muV: 13.6, kL: 89.3, kV: 15.8, sigma: 5.0},
		{designation: "R-32", muL: 113.6, muV: 12.8, kL: 124.8, kV: 15.5, sigma: 6.8},
	} {
		f, err := fluidOf(x.designation)
		if err != nil {
			t.Fatal(err)
		}
		b := f.At(f.BubblePressure(298.15))
		got := f.transport(&b)
		for _, y := range []struct {
			what            string
			got, want, most float64
		}{
			{"viscosity of liquid", got.muL * 1e6, x.muL, 0.15},
			{"viscosity of vapor", got.muV * 1e6, x.muV, 0.15},
			{"conductivity of liquid", got.kL * 1e3, x.kL, 0.2},
			{"conductivity of vapor", got.kV * 1e3, x.kV, 0.25},
			{"surface tension", got.sigma * 1e3, x.sigma, 0.15},
		} {
			t.Logf("%s, %s: %.1f, published %.1f", x.designation, y.what, y.got, y.want)
			if math.Abs(y.got/y.want-1) > y.most {
				t.Errorf("%s, %s: %.1f, published %.1f", x.designation, y.what, y.got, y.want)
			}
		}
	}
}

// The vapor's share of a tube rises with the quality from none to all, whatever the model, and
// vapor is not slower than liquid: it never fills more than without slip.
func TestVoidFraction(t *testing.T) {
	f, err := fluidOf("R-410A")
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(t *rapid.T) {
		b := f.At(rapid.Float64Range(6e5, 35e5).Draw(t, "pressure"))
		tr := f.transport(&b)
		s := slip(rapid.IntRange(0, int(slips)-1).Draw(t, "model"))
		g := rapid.Float64Range(60, 500).Draw(t, "flux")
		d := rapid.Float64Range(1e-3, 1e-2).Draw(t, "bore")
		last := 0.0
		for i := range 41 {
			x := float64(i) / 40
			a := s.void(x, g, d, &tr)
			free := 1 / (1 + (1-x)/max(x, 1e-9)*tr.rhoV/tr.rhoL)
			if a < last-1e-3 || a > free+1e-9 {
				t.Fatalf(
					"model %d, quality %.3f: %.4f after %.4f, without slip %.4f", s, x, a, last,
					free,
				)
			}
			last = a
		}
		if last != 1 {
			t.Fatalf("vapor alone fills %.3f", last)
		}
	})
}
