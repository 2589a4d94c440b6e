package coldroom

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/satline/satline/internal/judge/coldroom/bench"
	"github.com/satline/satline/internal/judge/modes"
	"github.com/satline/satline/quantity"
)

// Any machine of the bench that was read enough is foretold: the hotter the day the higher its
// head and the less it gives, and what is wrong with it is not far off what it then does.
func TestForecastOfAnyMachine(t *testing.T) {
	n, done := 120, 0
	var head, part []float64
	for i := range n {
		v := bench.Draw(rand.New(rand.NewPCG(5, uint64(i))), 0.4)
		c := caseOf(t, v)
		c.NominalCapacity = quantity.BtuPerHour(9000)
		foretell, err := Forecast(c)
		if err != nil {
			if _, wanting := err.(*modes.Refused); !wanting && err != errNotSolved {
				t.Errorf("visit %d: %v", i, err)
			}
			continue
		}
		now, err0 := foretell(modes.Scenario{})
		mild, err := foretell(modes.Scenario{OutdoorDryBulb: quantity.Fahrenheit(85)})
		hot, err2 := foretell(modes.Scenario{OutdoorDryBulb: quantity.Fahrenheit(105)})
		if err0 != nil || err != nil || err2 != nil {
			continue
		}
		tc, of := v.At(quantity.Fahrenheit(105))
		head = append(head, float64(hot.Condensing.Value-tc)/hot.Condensing.Std)
		part = append(part, float64(hot.Capacity.Value/now.Capacity.Value)/of-1)
		done++
		if hot.Condensing.Value <= mild.Condensing.Value ||
			hot.Capacity.Value >= mild.Capacity.Value {
			t.Errorf("visit %d, %s: %v, %v at 105 °F; %v, %v at 85 °F", i, v.Truth,
				hot.Condensing, hot.Capacity, mild.Condensing, mild.Capacity)
		}
	}
	rms := func(x []float64) float64 {
		sum := 0.0
		for _, v := range x {
			sum += v * v
		}
		return math.Sqrt(sum / float64(len(x)))
	}
	if rms(head) > 2 || rms(part) > 0.2 {
		t.Errorf(
			"head off by %.2f standard uncertainties, capacity by %.0f %%", rms(head),
			100*rms(part),
		)
	}
	if done < n*3/4 {
		t.Errorf("only %d of %d foretold", done, n)
	}
}

func BenchmarkForecast(b *testing.B) {
	c := caseOf(b, bench.Draw(rand.New(rand.NewPCG(41, 3)), 0))
	for b.Loop() {
		if _, err := Forecast(c); err != nil {
			b.Fatal(err)
		}
	}
}
