package helmholtz

import (
	"math"
	"math/rand/v2"
	"testing"
)

func TestElementaryFunctions(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	for range 200000 {
		x := (r.Float64() - 0.5) * 1440
		if got, want := exp(x), math.Exp(x); math.Abs(got-want) > 4.5e-16*want {
			t.Fatalf("exp(%v) = %v, want %v", x, got, want)
		}
		x = (r.Float64() - 0.5) * 4
		if got, want := exp(x), math.Exp(x); math.Abs(got-want) > 4.5e-16*want {
			t.Fatalf("exp(%v) = %v, want %v", x, got, want)
		}
		x = math.Exp((r.Float64() - 0.5) * 1400)
		if got, want := Log(x), math.Log(x); math.Abs(got-want) > 4.5e-16*math.Max(1,
			math.Abs(want)) {
			t.Fatalf("Log(%v) = %v, want %v", x, got, want)
		}
		x = 0.5 + r.Float64()
		if got, want := Log(x), math.Log(x); math.Abs(got-want) > 4.5e-16 {
			t.Fatalf("Log(%v) = %v, want %v", x, got, want)
		}
	}
	for _, x := range []float64{0, -1, math.Inf(1), math.Inf(-1), math.NaN(), 5e-324, 1, 1e308,
		-745, 709, 710, -1e300} {
		same := func(a, b float64) bool {
			return a == b || math.IsNaN(a) && math.IsNaN(b) ||
				math.Abs(a-b) < 1e-15*math.Max(1, math.Abs(b))
		}
		if !same(exp(x), math.Exp(x)) {
			t.Errorf("exp(%v) = %v", x, exp(x))
		}
		if !same(Log(x), math.Log(x)) {
			t.Errorf("Log(%v) = %v", x, Log(x))
		}
	}
}

func TestExpProducts(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	xs := []float64{0, 1, -1, 50, 1e4, -1e4, math.NaN()}
	for range 1000 {
		xs = append(xs, 60*(r.Float64()-0.5))
	}
	got := make([]float64, len(xs))
	for _, y := range []float64{0.4, -0.3, 0} {
		expProducts(got, xs, y)
		for i, x := range xs {
			if want := math.Exp(x * y); math.Abs(got[i]-want) > 4.5e-16*want ||
				math.IsNaN(want) != math.IsNaN(got[i]) {
				t.Fatalf("exp(%v·%v) = %v, want %v", x, y, got[i], want)
			}
		}
	}
}

var sinkFloat float64

func BenchmarkExp(b *testing.B) {
	x := 0.37
	for b.Loop() {
		sinkFloat = exp(x)
		x += 1e-9
	}
}

func BenchmarkStandardExp(b *testing.B) {
	x := 0.37
	for b.Loop() {
		sinkFloat = math.Exp(x)
		x += 1e-9
	}
}

func BenchmarkLog(b *testing.B) {
	x := 0.37
	for b.Loop() {
		sinkFloat = Log(x)
		x += 1e-9
	}
}

func BenchmarkStandardLog(b *testing.B) {
	x := 0.37
	for b.Loop() {
		sinkFloat = math.Log(x)
		x += 1e-9
	}
}
