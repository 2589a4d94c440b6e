package table

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A curve comes back to the last bit, whatever its numbers are.
func TestSmoothLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(0, 80).Draw(t, "n")
		number := rapid.OneOf(rapid.Float32(), rapid.Float32Range(-1e-3, 1e6))
		values := rapid.SliceOfN(number, n, n).Draw(t, "values")
		slopes := rapid.SliceOfN(number, n, n).Draw(t, "slopes")
		r := reader{rest: string(appendSmooth(nil, values, slopes))}
		v, m := r.smooth(n)
		if r.failed || r.rest != "" {
			t.Fatalf("%d bytes are left, failed %v", len(r.rest), r.failed)
		}
		for i := range n {
			if math.Float32bits(v[i]) != math.Float32bits(values[i]) ||
				math.Float32bits(m[i]) != math.Float32bits(slopes[i]) {
				t.Fatalf("node %d is %v, %v and was %v, %v", i, v[i], m[i], values[i], slopes[i])
			}
		}
	})
}

// Slopes of a quintic are integrated exactly over every cell.
func TestRise(t *testing.T) {
	slopes := make([]float32, 9)
	at := func(u float64) float64 { return u * u * u * u * u }
	for i := range slopes {
		slopes[i] = float32(at(float64(i)))
	}
	for i := range len(slopes) - 1 {
		a, b := float64(i), float64(i+1)
		want := (b*at(b) - a*at(a)) / 6
		if got := rise(slopes, i); math.Abs(got-want) > 1e-9*want {
			t.Errorf("over cell %d %v, want %v", i, got, want)
		}
	}
}

// A smooth curve takes little room.
func TestSmoothIsSmall(t *testing.T) {
	f := invented("x", 0)
	n := f.Curves[BubblePressure]
	if got := len(appendSmooth(nil, float32s(n.Values), float32s(n.Slopes))); got > 3*len(
		n.Values,
	) {
		t.Errorf("%d nodes take %d bytes", len(n.Values), got)
	}
}
