package refrigerant

import (
	"math"
	"testing"

	"github.com/satline/satline/internal/physics/table"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/quantity"
	"pgregory.net/rapid"
)

// blends are those that have a table of their two phases.
func blends(t testing.TB) (all []*Refrigerant) {
	t.Helper()
	for _, r := range All() {
		if !r.Pure() {
			all = append(all, r)
		}
	}
	return all
}

// boilingAt returns the two phases of r where the bubble point is the share u of
// the way from the coldest to the critical temperature.
func boilingAt(t rapid.TB, r *Refrigerant, u float64) (b boiling, p quantity.Pressure, ok bool) {
	t.Helper()
	low, high := r.Limits().MinTemperature, r.Critical().Temperature
	p, err := r.BubblePressure(low + quantity.Temperature(u)*(high-low))
	if err != nil {
		t.Fatal(err)
	}
	var point vle.Point
	liquid, err1 := r.edge(table.Bubble, p, &point)
	vapor, err2 := r.edge(table.Dew, p, &point)
	return b, p, err1 == nil && err2 == nil && r.boilAt(&b, &liquid, &vapor)
}

// Off the points that were solved, two-phase states of every blend keep to the
// equation of state.
func TestTwoPhasesAgainstEquation(t *testing.T) {
	type worst struct {
		error float64
		where string
	}
	var temperature, density, entropy, quality worst
	note := func(w *worst, limit, e float64, what string, r *Refrigerant, at State) {
		if where := r.designation + " at " + at.Temperature.String(); e > w.error {
			*w = worst{e, where}
		}
		if !(e <= limit) {
			t.Errorf(
				"%v at %v Pa, quality %.4f: %s is off by %.2g", r, float64(at.Pressure), at.Quality,
				what, e,
			)
		}
	}
	for _, r := range blends(t) {
		q, err := r.equation()
		if err != nil {
			t.Fatal(err)
		}
		for _, u := range []float64{0.003, 0.11, 0.3, 0.47, 0.62, 0.77, 0.89, 0.955} {
			b, p, ok := boilingAt(t, r, u)
			if !ok {
				if u < 0.8 {
					t.Errorf("%v has no table at %v", r, p)
				}
				continue
			}
			for _, share := range []float64{0.004, 0.05, 0.33, 0.7, 0.96, 0.998} {
				got := b.state(p, share)
				f, err := q.system.FlashPH(float64(p), float64(got.Enthalpy)/q.perMass)
				if err != nil {
					t.Fatalf("%v at %v Pa, share %v: %v", r, float64(p), share, err)
				}
				want := q.flashed(p, &f)
				note(
					&temperature, tableKelvin, math.Abs(float64(got.Temperature-want.Temperature)),
					"temperature", r, got,
				)
				note(
					&density, tableRelative, math.Abs(float64(got.Density/want.Density)-1),
					"density", r, got,
				)
				note(
					&entropy, tableRelative,
					math.Abs(float64(got.Entropy-want.Entropy))*float64(want.Temperature)/200e3,
					"entropy", r, got,
				)
				note(&quality, tableRelative, math.Abs(got.Quality-want.Quality), "quality", r, got)
			}
		}
	}
	t.Logf(
		"temperature %v, density %v, entropy %v, quality %v", temperature, density, entropy,
		quality,
	)
}

// On an isobar everything rises from bubble to dew with the enthalpy: but for the
// temperature of what boils as an azeotrope, which stands still within what the
// tables of its edges know.
func TestTwoPhasesAreMonotone(t *testing.T) {
	all := blends(t)
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(all).Draw(t, "blend")
		b, p, ok := boilingAt(t, r, rapid.Float64Range(0, 1).Draw(t, "place"))
		if !ok {
			return
		}
		x := rapid.Float64Range(0, 1).Draw(t, "from")
		y := rapid.Float64Range(0, 1).Draw(t, "to")
		if x > y {
			x, y = y, x
		}
		if y-x < 1e-9 {
			return
		}
		low, high := b.state(p, x), b.state(p, y)
		falls := 0.0
		if b.vapor.temperature-b.liquid.temperature < 2*tableKelvin {
			falls = 2e-4
		}
		if !(high.Temperature >= low.Temperature-quantity.Temperature(falls)) ||
			!(high.Quality > low.Quality) ||
			!(high.Density < low.Density) ||
			!(high.Entropy > low.Entropy) {
			t.Errorf("%v at %v Pa: from %+v to %+v", r, float64(p), low, high)
		}
	})
}

// At both ends the two-phase states are the edges themselves.
func TestTwoPhasesJoinTheEdges(t *testing.T) {
	for _, r := range blends(t) {
		for _, u := range []float64{0.001, 0.4, 0.8, 0.95} {
			b, p, ok := boilingAt(t, r, u)
			if !ok {
				continue
			}
			for share, edge := range []*saturated{&b.liquid, &b.vapor} {
				s := b.state(p, float64(share))
				for what, e := range map[string]float64{
					"temperature": float64(s.Temperature)/edge.temperature - 1,
					"density":     float64(s.Density)/edge.density - 1,
					"enthalpy":    (float64(s.Enthalpy) - edge.enthalpy) / enthalpyScale,
					"entropy":     (float64(s.Entropy) - edge.entropy) / 1e3,
					"quality":     s.Quality - float64(share),
				} {
					if !(math.Abs(e) < 1e-12) {
						t.Errorf(
							"%v at %v Pa: %s ends %.2g off edge %d", r, float64(p), what, e, share,
						)
					}
				}
			}
			// From outside, the equation comes to the same edges.
			for h, inside := range map[quantity.SpecificEnthalpy]quantity.SpecificEnthalpy{
				quantity.SpecificEnthalpy(b.liquid.enthalpy -
					1e-5): quantity.SpecificEnthalpy(b.liquid.enthalpy + 1e-5),
				quantity.SpecificEnthalpy(b.vapor.enthalpy +
					1e-5): quantity.SpecificEnthalpy(b.vapor.enthalpy - 1e-5),
			} {
				out, err1 := r.StateAtEnthalpy(p, h)
				in, err2 := r.StateAtEnthalpy(p, inside)
				if err1 != nil || err2 != nil || out.Phase == TwoPhase || in.Phase != TwoPhase {
					t.Fatalf("%v at %v Pa: %v, %v, %+v, %+v", r, float64(p), err1, err2, out, in)
				}
				if math.Abs(float64(out.Temperature-in.Temperature)) > tableKelvin ||
					math.Abs(float64(out.Density/in.Density)-1) > tableRelative ||
					math.Abs(float64(out.Entropy-in.Entropy)) > tableRelative*1e3 {
					t.Errorf("%v at %v Pa: %+v next to %+v", r, float64(p), out, in)
				}
			}
		}
	}
}

// What enthalpy leads to, entropy and quality lead to as well.
func TestTwoPhasesRoundTrip(t *testing.T) {
	all := blends(t)
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(all).Draw(t, "blend")
		b, p, ok := boilingAt(t, r, rapid.Float64Range(0, 1).Draw(t, "place"))
		if !ok {
			return
		}
		share := rapid.Float64Range(1e-6, 1-1e-6).Draw(t, "share")
		s, err := r.StateAtEnthalpy(
			p,
			quantity.SpecificEnthalpy(b.liquid.enthalpy+share*(b.vapor.enthalpy-b.liquid.enthalpy)),
		)
		if err != nil || s.Phase != TwoPhase {
			t.Fatalf("%v at %v Pa, share %v: %+v, %v", r, float64(p), share, s, err)
		}
		byEntropy, err1 := r.StateAtEntropy(p, s.Entropy)
		byQuality, err2 := r.StateAtQuality(p, s.Quality)
		if err1 != nil || err2 != nil {
			t.Fatalf("%v, %v", err1, err2)
		}
		for _, again := range []State{byEntropy, byQuality} {
			if again.Phase != TwoPhase || math.Abs(float64(again.Enthalpy-s.Enthalpy)) > 1e-6 ||
				math.Abs(
					float64(again.Temperature-s.Temperature),
				) > 1e-9 || math.Abs(again.Quality-s.Quality) > 1e-11 {
				t.Errorf("%v at %v Pa: %+v becomes %+v", r, float64(p), s, again)
			}
		}
	})
}

// On an isobar T ds = dh, though temperature and entropy are tables of their own.
func TestTwoPhasesKeepTheSecondLaw(t *testing.T) {
	all := blends(t)
	rapid.Check(t, func(t *rapid.T) {
		r := rapid.SampledFrom(all).Draw(t, "blend")
		b, p, ok := boilingAt(t, r, rapid.Float64Range(0, 1).Draw(t, "place"))
		if !ok {
			return
		}
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		slope := (b.vapor.entropy - b.liquid.entropy) *
			(1 + b.isobar.Slope(table.InnerEntropy, share))
		heat := (b.vapor.enthalpy - b.liquid.enthalpy) / b.temperature(share)
		if e := slope/heat - 1; math.Abs(e) > 2e-4 {
			t.Errorf("%v at %v Pa, share %v: T ds/dh is off 1 by %.1e", r, float64(p), share, e)
		}
	})
}
