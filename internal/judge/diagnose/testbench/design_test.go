package testbench

import (
	"errors"
	"math"
	"math/rand/v2"
	"testing"
)

// A machine that was sized for its rating meets it when it is solved there.
func TestMeetsItsRating(t *testing.T) {
	tried := map[string]bool{}
	for i := range 80 {
		d := drawDesign(rand.New(rand.NewPCG(5, uint64(i))))
		m, err := d.build()
		if errors.Is(err, errDesign) {
			continue
		}
		if err != nil {
			t.Fatal(err)
		}
		tried[d.designation] = true
		o, err := m.Operate(Rated())
		if err != nil {
			t.Errorf("%d, %s: %v", i, d.designation, err)
			continue
		}
		for _, x := range []struct {
			what            string
			got, want, most float64
		}{
			{"evaporating", float64(o.Evaporating), d.evaporating, 0.02},
			{"condensing", float64(o.Condensing), d.condensing, 0.02},
			{"superheat", float64(o.Superheat), d.superheat, 0.05},
			{"subcooling", float64(o.Subcooling), d.subcooling, 0.05},
			{"capacity, per cent", 100 * float64(o.Capacity) / d.nominal, 100, 0.2},
		} {
			if math.Abs(x.got-x.want) > x.most {
				t.Errorf("%d, %s %d: %s %.3f, sized for %.3f",
					i, d.designation, d.metering, x.what, x.got, x.want)
			}
		}
	}
	for _, k := range classes {
		if !tried[k.designation] {
			t.Errorf("no %s among the machines drawn", k.designation)
		}
	}
}
