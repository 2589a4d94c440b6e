package cyclefluid

import (
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func mustNew(t testing.TB, designation string) (*Fluid, *refrigerant.Refrigerant) {
	t.Helper()
	r, err := refrigerant.Lookup(designation)
	if err != nil {
		t.Fatal(err)
	}
	f, err := New(r)
	if err != nil {
		t.Fatal(err)
	}
	return f, r
}

// Every state that a machine reaches against the equation of state.
func TestAgainstEquation(t *testing.T) {
	for _, d := range []string{"R-22", "R-134a", "R-290", "R-32", "R-1234yf", "R-410A", "R-454B",
		"R-407C", "R-455A", "R-474A"} {
		t.Run(d, func(t *testing.T) {
			f, r := mustNew(t, d)
			var worst struct{ t, v, s, h, edge, liquid float64 }
			lo, hi := math.Log(f.LowPressure()*1.1), math.Log(0.9*f.CriticalPressure)
			for i := range 40 {
				p := math.Exp(lo + (hi-lo)*(float64(i)+0.37)/40)
				b := f.At(p)
				dew, _ := r.DewTemperature(quantity.Pressure(p))
				bub, _ := r.BubbleTemperature(quantity.Pressure(p))
				hb, _ := r.BubbleEnthalpy(bub)
				hd, _ := r.DewEnthalpy(dew)
				worst.edge = max(
					worst.edge, math.Abs(b.Dew.T-float64(dew)), math.Abs(b.Bubble.T-float64(bub)),
					math.Abs(b.Dew.H-float64(hd))/2000, math.Abs(b.Bubble.H-float64(hb))/2000,
				)
				for _, below := range []float64{2, 10, 20} {
					if p > 0.7*f.CriticalPressure {
						break
					}
					if s, err := r.State(quantity.Pressure(p),
						bub-quantity.Temperature(below)); err == nil {
						l := b.LiquidAt(float64(s.Temperature))
						worst.liquid = max(
							worst.liquid, math.Abs(l.H-float64(s.Enthalpy))/(b.Dew.H-b.Bubble.H),
						)
						if back := b.LiquidAtEnthalpy(l.H); math.Abs(back.T-l.T) > 1e-6 {
							t.Errorf("liquid at %.2f K back from enthalpy as %.9f K", l.T, back.T)
						}
					}
				}
				for j := range 25 {
					tt := b.Dew.T + 0.3 + float64(j)*4.1
					if tt > 420 {
						break
					}
					s, err := r.State(quantity.Pressure(p), quantity.Temperature(tt))
					if err != nil {
						t.Fatal(err)
					}
					v := b.AtEnthalpy(float64(s.Enthalpy))
					worst.t = max(worst.t, math.Abs(v.T-tt))
					worst.v = max(worst.v, math.Abs(v.V*float64(s.Density)-1))
					worst.s = max(worst.s, math.Abs(v.S-float64(s.Entropy)))
					worst.h = max(worst.h, math.Abs(b.VaporAt(tt).H-float64(s.Enthalpy)))
					if e := b.AtEntropy(v.S); math.Abs(e.H-v.H) > 1e-5*(b.End()-b.Dew.H) {
						t.Errorf(
							"p %.0f T %.1f: entropy back to enthalpy off by %g", p, tt, e.H-v.H,
						)
					}
				}
			}
			t.Logf(
				"worst: T %.4f K, v %.2g, s %.3g J/(kg K), h(T) %.3g J/kg, edges %.3g K, liquid "+
					"%.2g of the latent heat",
				worst.t, worst.v, worst.s, worst.h, worst.edge, worst.liquid,
			)
			if worst.t > 1e-3 || worst.v > 1e-5 || worst.s > 0.01 || worst.h > 2 ||
				worst.edge > 1e-4 ||
				worst.liquid > 1e-5 {
				t.Errorf("outside the stated error")
			}
		})
	}
}

// Of every refrigerant that can be sampled, also of those whose critical point lies beyond
// the temperatures of a machine, vapor grows hotter with enthalpy and entropy and neither
// ends, and both lead back, on past the end of the polynomials.
func TestVaporOfEveryRefrigerant(t *testing.T) {
	sampled := 0
	for _, r := range refrigerant.All() {
		f, err := New(r)
		if err != nil {
			continue
		}
		sampled++
		for i := range 20 {
			b := f.At(
				f.LowPressure() * math.Pow(
					f.CriticalPressure*nearest/f.LowPressure(), float64(i)/19,
				),
			)
			last := b.AtEnthalpy(b.Dew.H)
			for _, share := range []float64{0.01, 0.1, 0.3, 0.6, 0.9, 1, 1.2, 2, 10, 1000} {
				s := b.AtEnthalpy(b.Dew.H + share*(b.End()-b.Dew.H))
				if !(s.T > last.T && s.S > last.S && s.V > last.V) {
					t.Errorf(
						"%v at %.0f Pa, %g of the way to the end: %+v after %+v", r, b.P, share, s,
						last,
					)
				}
				if e := b.AtEntropy(s.S); !(math.Abs(e.H-s.H) <= 1e-7*max(s.H-b.Dew.H,
					b.End()-b.Dew.H)) {
					t.Errorf(
						"%v at %.0f Pa, %g of the way to the end: entropy %g back to enthalpy "+
							"%g, want %g",
						r, b.P, share, s.S, e.H, s.H,
					)
				}
				last = s
			}
		}
	}
	if sampled < 150 {
		t.Errorf("only %d refrigerants could be sampled", sampled)
	}
}

func BenchmarkNew(b *testing.B) {
	r, err := refrigerant.Lookup("R-22")
	if err != nil {
		b.Fatal(err)
	}
	for b.Loop() {
		if _, err := New(r); err != nil {
			b.Fatal(err)
		}
	}
}

var sink float64

func BenchmarkIsobar(b *testing.B) {
	f, _ := mustNew(b, "R-22")
	b.ReportAllocs()
	var v Isobar
	i := 0
	for b.Loop() {
		f.Set(&v, 6e5+float64(i&255)*100)
		sink += v.Dew.T
		i++
	}
}

func BenchmarkVapor(b *testing.B) {
	f, _ := mustNew(b, "R-22")
	v := f.At(6e5)
	i := 0
	for b.Loop() {
		sink += v.AtEnthalpy(v.Dew.H + 1e4 + float64(i&255)).S
		i++
	}
}

func BenchmarkAtEntropy(b *testing.B) {
	f, _ := mustNew(b, "R-22")
	v := f.At(16e5)
	i := 0
	for b.Loop() {
		sink += v.AtEntropy(v.Dew.S + 60 + 0.1*float64(i&255)).H
		i++
	}
}
