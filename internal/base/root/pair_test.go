package root

import (
	"math"
	"testing"
)

func TestPair(t *testing.T) {
	const within = 1e-9
	calls := 0
	circleAndCurve := func(x, y float64) (float64, float64) {
		calls++
		return (x*x + y*y - 4) / within, (math.Exp(x) + y - 1) / within
	}
	x, y, ok := Pair(circleAndCurve, 0.8, -1.5, 0.1, 0.1)
	if u, v := circleAndCurve(x, y); !ok || math.Abs(u) > 1 || math.Abs(v) > 1 || calls > 12 {
		t.Errorf("%v, %v after %d calls: %v, %v", x, y, calls, u, v)
	}
	none := func(x, y float64) (float64, float64) { return x*x + 2, y }
	if x, y, ok := Pair(none, 1, 1, 0.1, 0.1); ok {
		t.Errorf("no zero, but %v, %v", x, y)
	}
	noNumber := func(x, y float64) (float64, float64) { return math.NaN(), 0 }
	if x, y, ok := Pair(noNumber, 1, 1, 0.1, 0.1); ok {
		t.Errorf("no number, but %v, %v", x, y)
	}
}
