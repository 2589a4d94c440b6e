package cycle

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"gonum.org/v1/gonum/mat"
)

// One reading that cannot be is named before all others.
func TestFitNamesWhatDoesNotFit(t *testing.T) {
	for m := refrigerant.FixedRestrictor; m <= refrigerant.Capillary; m++ {
		s := machine(t, "R-410A", m)
		c := weather(92, 77, 65)
		o := solve(t, s, c, Faults{})
		for name, spoil := range map[string]func(*Readings){
			suctionPressure: func(v *Readings) { v.SuctionPressure.Value = quantity.PSIG(400) },
			liquidPressure:  func(v *Readings) { v.LiquidPressure.Value = quantity.PSIG(30) },
			suctionLine:     func(v *Readings) { v.SuctionLine.Value = quantity.Fahrenheit(190) },
			liquidLine:      func(v *Readings) { v.LiquidLine.Value = quantity.Fahrenheit(210) },
			dischargeLine: func(v *Readings) {
				v.DischargeLine.Value = quantity.Fahrenheit(-20)
			},
			supply: func(v *Readings) { v.Supply.Value = quantity.Fahrenheit(140) },
			condenserLeaving: func(v *Readings) {
				v.CondenserLeaving.Value = quantity.Fahrenheit(20)
			},
			power: func(v *Readings) {
				*v.Power = quantity.Watts(30).PlusMinus(quantity.Watts(1))
			},
		} {
			v := visitTo(nil, c, &o)
			spoil(&v)
			_, err := Fit(s, v)
			var off *MisfitError
			if !errors.As(err, &off) {
				t.Errorf("%v, %s: %v", m, name, err)
				continue
			}
			if off.Misfit <= impossible || len(off.Misses) == 0 || off.Misses[0].Reading != name {
				t.Errorf("%v, %s: misfit %.1f, %v", m, name, off.Misfit, off)
			}
		}
	}
}

// The search for a machine that reads as none does ends, and names what is off the further
// the sooner.
func TestFitEnds(t *testing.T) {
	n := 60
	if testing.Short() {
		n = 12
	}
	r := rand.New(rand.NewPCG(13, 17))
	u := func(a, b float64) float64 { return a + (b-a)*r.Float64() }
	for i := range n {
		s := machine(
			t, fluids[i%len(fluids)], refrigerant.FixedRestrictor+refrigerant.Metering(i%4),
		)
		c := weather(u(60, 110), 77, 65)
		o := solve(t, s, c, Faults{})
		v := visitTo(r, c, &o)
		v.SuctionPressure.Value, v.LiquidPressure.Value = quantity.PSIG(u(5, 500)),
			quantity.PSIG(u(5, 600))
		v.SuctionLine.Value, v.LiquidLine.Value = quantity.Fahrenheit(u(-40, 200)),
			quantity.Fahrenheit(u(-40, 200))
		v.DischargeLine.Value, v.Supply.Value = quantity.Fahrenheit(u(0, 350)),
			quantity.Fahrenheit(u(-40, 150))
		l := leastSquares{s: s, v: &v, readings: v.readings(), parameters: parametersFor(s, &v)}
		f, err := l.run()
		// What was begun when the limit was met is brought to its end.
		if l.work > 2*mostWork {
			t.Errorf("case %d: %d rounds", i, l.work)
		}
		if err == nil {
			if !(f.Misfit() <= impossible) {
				t.Errorf("case %d: misfit %v", i, f.Misfit())
			}
			continue
		}
		var off *MisfitError
		if !errors.As(err, &off) || len(off.Misses) == 0 {
			t.Errorf("case %d: %v", i, err)
			continue
		}
		if !slices.IsSortedFunc(
			off.Misses, func(a, b Miss) int { return int(math.Copysign(1, b.Off-a.Off)) },
		) {
			t.Errorf("case %d: %v", i, off.Misses)
		}
	}
}

// Unknowns that nothing moves have no covariance.
func TestUnsettled(t *testing.T) {
	if _, err := inverse(mat.NewSymDense(2, []float64{1, 1, 1, 1})); !errors.Is(err, ErrUnsettled) {
		t.Error(err)
	}
	if _, err := inverse(mat.NewSymDense(1, []float64{math.NaN()})); !errors.Is(err, ErrUnsettled) {
		t.Error(err)
	}
}
