package diagram

import (
	"math"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/plot/vg"
)

// planeOf is a plane a thousand points wide and high, and the state under a point of
// it.
func planeOf(t *testing.T, name string) (*plane, func(vg.Point) refrigerant.State) {
	t.Helper()
	r, err := refrigerant.Lookup(name)
	if err != nil {
		t.Fatal(err)
	}
	d, err := New(r, Options{})
	if err != nil {
		t.Fatal(err)
	}
	pl := &plane{
		scales: scalesOf(d.options),
		fluid:  r,
		dome:   d.dome,
		frame:  vg.Rectangle{Max: vg.Point{X: 1000, Y: 1000}},
	}
	pl.low, pl.high, pl.least, pl.most = d.bounds()
	return pl, func(at vg.Point) refrigerant.State {
		t.Helper()
		p := pl.low * quantity.Pressure(math.Pow(float64(pl.high/pl.low), float64(at.Y)/1000))
		s, err := r.StateAtEnthalpy(
			p, pl.least+(pl.most-pl.least)*quantity.SpecificEnthalpy(at.X/1000),
		)
		if err != nil {
			t.Fatal(err)
		}
		return s
	}
}

var fluids = []string{"R-22", "R-600a", "R-744", "R-410A", "R-407C", "R-448A"}

// Under every point of a line that was computed the refrigerant has the property of
// the line.
func TestIsotherms(t *testing.T) {
	for _, name := range fluids {
		pl, at := planeOf(t, name)
		tc := pl.fluid.Critical().Temperature
		for _, warm := range []quantity.Temperature{tc - 60, tc - 20, tc + 10, tc + 25} {
			line := pl.isotherm(warm)
			n := 0
			for _, piece := range [][]vg.Point{line.liquid, line.across, line.vapor} {
				for _, point := range piece {
					if point.X < 0 || point.X > 1000 {
						continue
					}
					n++
					if s := at(point); math.Abs(float64(s.Temperature-warm)) > 0.02 {
						t.Errorf(
							"%s: %v on the isotherm of %v at %v", name, s.Temperature, warm,
							s.Pressure,
						)
					}
				}
			}
			if n < 6 {
				t.Errorf("%s: %d points on the isotherm of %v", name, n, warm)
			}
		}
	}
}

// An isotherm crosses the dome level in a pure fluid, and in a zeotropic blend falls
// from the bubble to the dew pressure of its temperature.
func TestIsothermAcross(t *testing.T) {
	const warm = quantity.Temperature(280)
	for _, name := range fluids {
		pl, _ := planeOf(t, name)
		across := pl.isotherm(warm).across
		bubble, err1 := pl.fluid.BubblePressure(warm)
		dew, err2 := pl.fluid.DewPressure(warm)
		if err1 != nil || err2 != nil || len(across) < 2 {
			t.Fatal(name, err1, err2, len(across))
		}
		fall := across[0].Y - across[len(across)-1].Y
		if want := pl.y(bubble) - pl.y(dew); math.Abs(float64(fall-want)) > 1e-3 {
			t.Errorf("%s falls %.2f points, not %.2f", name, fall, want)
		}
		if pl.fluid.Pure() && fall != 0 {
			t.Errorf("%s is pure and falls %g points", name, fall)
		}
		if name == "R-407C" && (fall < 20 || len(across) < 4) {
			t.Errorf("R-407C falls %.1f points in %d", fall, len(across))
		}
		for i := 1; i < len(across); i++ {
			if across[i].X <= across[i-1].X || across[i].Y > across[i-1].Y {
				t.Errorf("%s: point %d of the crossing turns back", name, i)
			}
		}
	}
}

func TestIsentropes(t *testing.T) {
	for _, name := range fluids {
		pl, at := planeOf(t, name)
		edge, err := pl.fluid.DewEntropy(280)
		if err != nil {
			t.Fatal(err)
		}
		above := pl.isobars(pl.fluid.Critical().Temperature + 60)
		if len(above) < 2 {
			t.Errorf("%s: %d isobars above the critical point", name, len(above))
		}
		s := edge + 30
		n := 0
		for _, piece := range pl.isentrope(s, pl.dome.criticalEntropy, above) {
			for _, point := range piece {
				if point.X < 0 || point.X > 1000 {
					continue
				}
				n++
				if st := at(point); math.Abs(float64(st.Entropy-s)) > 0.3 {
					t.Errorf(
						"%s: %v on the isentrope of %v at %v", name, st.Entropy, s, st.Pressure,
					)
				}
			}
		}
		if n < 6 {
			t.Errorf("%s: %d points on an isentrope", name, n)
		}
	}
}

func TestQualities(t *testing.T) {
	shares := []float64{0.1, 0.25, 0.5, 0.75, 0.9}
	for _, name := range fluids {
		pl, at := planeOf(t, name)
		for i, line := range pl.qualities(shares) {
			if len(line) < 10 {
				t.Errorf("%s: %d points on a line of quality", name, len(line))
			}
			for _, point := range line[:len(line)-1] {
				if s := at(point); math.Abs(s.Quality-shares[i]) > 0.002 {
					t.Errorf(
						"%s: quality %.4f on the line of %.2f at %v", name, s.Quality, shares[i],
						s.Pressure,
					)
				}
			}
		}
	}
}

// Ticks are round, in order of roundness, apart, and count from the atmosphere where
// one is given.
func TestPressureTicks(t *testing.T) {
	gauge := scalesOf(Options{Atmosphere: quantity.StandardAtmosphere})
	ticks := gauge.pressureTicks(quantity.PSIA(5), quantity.PSIA(700), 0.05)
	if ticks[0] != 0 {
		t.Errorf("a gauge scale without its zero: %v", ticks)
	}
	vacuum := false
	for i, v := range ticks {
		vacuum = vacuum || v < 0
		if p := gauge.fromPressure(v); p < quantity.PSIA(5) || p > quantity.PSIA(700) {
			t.Errorf("%v is off the scale", v)
		}
		for _, w := range ticks[:i] {
			if math.Abs(math.Log(float64(gauge.fromPressure(v)/gauge.fromPressure(w)))) < 0.05 {
				t.Errorf("%v and %v stand too close", v, w)
			}
		}
	}
	if !vacuum {
		t.Errorf("no tick below the atmosphere: %v", ticks)
	}
}
