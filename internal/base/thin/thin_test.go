package thin

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"
)

func TestMeanLeavesOutOneFreak(t *testing.T) {
	for _, c := range []struct {
		readings []float64
		want     float64
	}{
		{[]float64{7}, 7}, {[]float64{7, 9}, 8}, {[]float64{7, 900, 8}, 8},
		{[]float64{7, 8, -900, 9, 8, 1000}, 8},
	} {
		var m Mean
		for _, v := range c.readings {
			m.Add(v)
		}
		if got, ok := m.Value(); !ok || math.Abs(got-c.want) > 1e-9 {
			t.Errorf("%v: %v, want %v", c.readings, got, c.want)
		}
	}
	var none Mean
	if _, ok := none.Value(); ok {
		t.Error("a mean of nothing")
	}
}

// The mean of a slot is one of its readings or between them, and its time lies in
// the slot: what is thinned stays as it is.
func TestThinnedStays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slot := rapid.Int64Range(-1e6, 1e6).Draw(t, "slot")
		var m, again Mean
		var c, clock Clock
		low, high := math.Inf(1), math.Inf(-1)
		for range rapid.IntRange(1, 40).Draw(t, "n") {
			at := time.Duration(slot)*width +
				time.Duration(rapid.Int64Range(0, int64(width)-1).Draw(t, "at"))
			if Slot(at) != slot {
				t.Fatalf("%v in slot %d, want %d", at, Slot(at), slot)
			}
			v := rapid.Float64Range(-1e6, 1e6).Draw(t, "v")
			low, high = min(low, v), max(high, v)
			m.Add(v)
			c.Add(at)
		}
		v, _ := m.Value()
		if v < low || v > high || Slot(c.At()) != slot {
			t.Fatalf("%v of %v to %v, at %v of slot %d", v, low, high, c.At(), slot)
		}
		again.Add(v)
		clock.Add(c.At())
		if w, _ := again.Value(); w != v || clock.At() != c.At() {
			t.Fatalf("%v at %v thinned again is %v at %v", v, c.At(), w, clock.At())
		}
	})
}
