package finite

import (
	"math"
	"testing"
)

func TestOrZero(t *testing.T) {
	for v, want := range map[float64]float64{
		0: 0, -1: -1, math.MaxFloat64: math.MaxFloat64, math.Inf(1): 0, math.Inf(-1): 0,
	} {
		if got := OrZero(v); got != want {
			t.Errorf("%v becomes %v", v, got)
		}
	}
	if got := OrZero(math.NaN()); got != 0 {
		t.Errorf("NaN becomes %v", got)
	}
}
