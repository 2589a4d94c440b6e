package fluiddata_test

import (
	"math"
	"slices"
	"testing"

	"github.com/satline/satline/internal/physics/fluiddata"
	"github.com/satline/satline/internal/physics/helmholtz"
	"github.com/satline/satline/internal/physics/vle"
	"github.com/satline/satline/refrigerant"
)

// ASHRAE Handbook Fundamentals (SI), 2021, chapter 29, table 2: normal bubble and dew points
// in °C of the blends that pairs are anchored to.
var printed = []struct {
	designation string
	bubble, dew float64
}{
	{"R-401A", -34.4, -28.8}, {"R-401B", -35.7, -30.8}, {"R-401C", -30.5, -23.8},
	{"R-402A", -49.2, -47.0}, {"R-402B", -47.2, -44.9}, {"R-406A", -32.7, -23.5},
	{"R-408A", -45.5, -45.0}, {"R-409A", -35.4, -27.5}, {"R-409B", -36.5, -29.7},
	{"R-414A", -34.0, -25.8}, {"R-414B", -34.4, -26.1}, {"R-416A", -23.4, -21.8},
	{"R-424A", -39.1, -33.3}, {"R-426A", -28.5, -26.7}, {"R-429A", -26.0, -25.6},
	{"R-435A", -26.1, -25.9}, {"R-437A", -32.9, -29.2}, {"R-438A", -43.0, -36.4},
	{"R-446A", -49.4, -44.0}, {"R-453A", -42.2, -35.0},
}

// offPrint is the sum of squares that an anchored pair has its part in, with its γT moved.
func offPrint(t *testing.T, a *fluiddata.AnchoredPair, by float64) float64 {
	t.Helper()
	const eachOff = 0.4 // K
	sum := (a.Pair.GammaT + by - a.Likeness) / a.Spread
	sum *= sum
	for _, p := range printed {
		r, err := refrigerant.Lookup(p.designation)
		if err != nil {
			t.Fatal(err)
		}
		var names []string
		for _, c := range r.Composition() {
			names = append(names, c.Designation)
		}
		if !slices.Contains(names, a.Pair.First) || !slices.Contains(names, a.Pair.Second) {
			continue
		}
		m, err := fluiddata.NewModelShifted(names, r.MoleFractions(), a.Pair.First, a.Pair.Second,
			by)
		if err != nil {
			t.Fatal(err)
		}
		s := vle.New(m)
		bubble, err := s.BubbleP(101325)
		if err != nil {
			t.Fatal(err)
		}
		dew, err := s.DewP(101325)
		if err != nil {
			t.Fatal(err)
		}
		sum += math.Pow((bubble.T-273.15-p.bubble)/eachOff, 2)
		sum += math.Pow((dew.T-273.15-p.dew)/eachOff, 2)
	}
	return sum
}

// Every γT is where the sum of squares is least, and its doubt is no less than the curvature
// there says; what has no print is at its likeness.
func TestAnchored(t *testing.T) {
	for _, a := range fluiddata.AnchoredPairs() {
		if !a.Printed {
			if a.Pair.GammaT != a.Likeness || a.Doubt < a.Spread {
				t.Errorf("%s with %s is not at its likeness", a.Pair.First, a.Pair.Second)
			}
			continue
		}
		const step = 0.2 // of the doubt
		here := offPrint(t, &a, 0)
		less, more := offPrint(t, &a, -step*a.Doubt), offPrint(t, &a, step*a.Doubt)
		curvature := ((less+more)/2 - here) / (step * step)
		least := (less - more) / (4 * step * curvature)
		t.Logf("%s with %s: least at %+.2f of the doubt, which the curvature makes %.2f times "+
			"that alone",
			a.Pair.First, a.Pair.Second, least, math.Sqrt(curvature))
		if !(math.Abs(least) < 0.1) || !(curvature > 0.9) {
			t.Errorf("%s with %s: not the least", a.Pair.First, a.Pair.Second)
		}
	}
}

// Estimates stand in only where no paper has the pair, in either order, and γT is moved
// whatever the form of the pair.
func TestEstimates(t *testing.T) {
	for _, a := range fluiddata.AnchoredPairs() {
		if fluiddata.PairOf(a.Pair.First, a.Pair.Second) != nil {
			t.Errorf("%s with %s is published", a.Pair.First, a.Pair.Second)
		}
		e := fluiddata.EstimateOf(a.Pair.Second, a.Pair.First)
		if e.Pair != a.Pair || e.Doubt != a.Doubt {
			t.Errorf("%s with %s: %+v", a.Pair.Second, a.Pair.First, e)
		}
	}
	e := fluiddata.EstimateOf("R-22", "R-1132a")
	if e.Pair != nil || e.Doubt != fluiddata.LinearDoubt {
		t.Errorf("R-22 with R-1132a: %+v", e)
	}
	for _, pair := range [][2]string{{"R-22", "R-124"}, {"R-227ea", "R-236fa"}, {"R-32", "R-125"}} {
		boiling := func(by float64) float64 {
			m, err := fluiddata.NewModelShifted(pair[:], []float64{0.5, 0.5}, pair[1], pair[0], by)
			if err != nil {
				t.Fatal(err)
			}
			point, err := vle.New(m).BubbleP(101325)
			if err != nil {
				t.Fatal(err)
			}
			return point.T
		}
		// A mixture that is reduced by a higher temperature boils at a higher one, about
		// in proportion.
		at := boiling(0)
		if got := (boiling(0.02)/at - 1) / (0.02 / 2); !(got > 0.8 && got < 2.5) {
			t.Errorf("%v: moved by %.2f times the reducing temperature", pair, got)
		}
	}
}

// LinearDoubt is what the published pairs say.
func TestLinearDoubt(t *testing.T) {
	sum, n := 0.0, 0
	all := fluiddata.All()
	for i, a := range all {
		for _, b := range all[:i] {
			p := fluiddata.PairOf(a.Designation, b.Designation)
			if p == nil || p.Form == helmholtz.Lemmon || p.Departure != nil {
				continue
			}
			poor := []string{"R-717", "R-718"}
			if slices.Contains(poor, a.Designation) || slices.Contains(poor, b.Designation) {
				continue
			}
			linear := (a.ReducingT + b.ReducingT) / 2 / math.Sqrt(a.ReducingT*b.ReducingT)
			sum += (p.GammaT - linear) * (p.GammaT - linear)
			n++
		}
	}
	if got := math.Sqrt(sum / float64(n)); n != 220 || math.Abs(got-fluiddata.LinearDoubt) > 5e-4 {
		t.Errorf("%g of %d pairs", got, n)
	}
}
