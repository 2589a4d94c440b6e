package root

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Functions that are hard in different ways: a zero of high order, a pole close
// by, a cliff.
var functions = []struct {
	name      string
	f         func(float64) float64
	low, high float64
	zero      float64
	within    float64
}{
	{"a line", func(x float64) float64 { return x - 0.3 }, -1, 4, 0.3, 1e-15},
	{
		"a cubic, x³ - 2x - 5 of Wallis", func(x float64) float64 { return x*x*x - 2*x - 5 }, 2, 3,
		2.0945514815423265, 1e-15,
	},
	{
		"a zero of the ninth order", func(x float64) float64 { return math.Pow(x, 9) }, -1, 3, 0,
		1e-30,
	},
	{
		"next to a pole", func(x float64) float64 { return 1/(x-1.001) + 1e3 }, -5, 1.000999, 1,
		1e-12,
	},
	{"a cliff", func(x float64) float64 { return math.Copysign(1, x-0.7) }, 0, 1, 0.7, 1e-15},
	{"steep", func(x float64) float64 { return math.Exp(40*x) - 1 }, -3, 2, 0, 1e-17},
}

func TestFind(t *testing.T) {
	for _, c := range functions {
		calls := 0
		f := func(x float64) float64 {
			calls++
			if x < c.low || x > c.high {
				t.Errorf("%s: asked at %v, outside the bracket", c.name, x)
			}
			return c.f(x)
		}
		got := Find(f, c.low, c.high, c.f(c.low), c.f(c.high), 0, 0)
		if math.Abs(got-c.zero) > c.within || calls > 150 {
			t.Errorf("%s: %v after %d calls, want %v", c.name, got, calls, c.zero)
		}
	}
}

func TestFindEndsWhereThereIsNoNumber(t *testing.T) {
	calls := 0
	f := func(x float64) float64 {
		calls++
		return math.NaN()
	}
	if Find(f, 0, 1, -1, 1, 0, 0); calls != 1 {
		t.Errorf("asked %d times", calls)
	}
}

func TestTolerances(t *testing.T) {
	f := func(x float64) float64 { return x*x - 2 }
	calls := 0
	counted := func(x float64) float64 { calls++; return f(x) }
	exact := Find(counted, 0, 2, -2, 2, 0, 0)
	exactCalls := calls
	calls = 0
	near := Find(counted, 0, 2, -2, 2, 1e-3, 0)
	if math.Abs(near-math.Sqrt2) > 1e-3 || calls >= exactCalls {
		t.Errorf(
			"within 1e-3: %v after %d calls, exactly %v after %d", near, calls, exact, exactCalls,
		)
	}
	if small := Find(f, 0, 2, -2, 2, 0, 0.01); math.Abs(f(small)) > 0.01 {
		t.Errorf("f is %v at %v", f(small), small)
	}
}

func TestRising(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		zero := rapid.Float64Range(-10, 10).Draw(t, "zero")
		power := float64(2*rapid.IntRange(0, 4).Draw(t, "half power") + 1)
		got := Rising(func(x float64) float64 { return math.Pow(x-zero, power) }, -5, 5)
		if want := max(-5, min(5, zero)); math.Abs(got-want) > 1e-15*(1+math.Abs(want)) {
			t.Fatalf("%v, want %v", got, want)
		}
	})
}
