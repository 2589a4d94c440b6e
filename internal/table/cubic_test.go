package table

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A Hermite cubic reproduces every cubic exactly.
func TestHermiteReproducesCubics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(-10, 10)
		a := [4]float64{c.Draw(t, "a0"), c.Draw(t, "a1"), c.Draw(t, "a2"), c.Draw(t, "a3")}
		f := func(x float64) float64 { return a[0] + x*(a[1]+x*(a[2]+x*a[3])) }
		d := func(x float64) float64 { return a[1] + x*(2*a[2]+x*3*a[3]) }
		cells := Hermite([]float64{f(0), f(1), f(2)}, []float64{d(0), d(1), d(2)}, unit, Free)
		x := rapid.Float64Range(0, 2).Draw(t, "x")
		i := min(int(x), 1)
		if got := cells[i].At(x - float64(i)); math.Abs(got-f(x)) > 1e-12*(1+math.Abs(f(x)))*100 {
			t.Errorf("f(%v) = %v, want %v", x, got, f(x))
		}
		if got := cells[i].Slope(x - float64(i)); math.Abs(got-d(x)) > 1e-11*(1+math.Abs(d(x)))*100 {
			t.Errorf("f'(%v) = %v, want %v", x, got, d(x))
		}
	})
}

// Whatever slopes it is given, a Monotone curve stays between its nodes, rises
// where they rise, and keeps a continuous derivative.
func TestMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "n")
		y, m := make([]float64, n), make([]float64, n)
		for i := range y {
			m[i] = rapid.Float64Range(-20, 200).Draw(t, "slope")
			if i > 0 {
				y[i] = y[i-1] + rapid.Float64Range(0, 10).Draw(t, "step")
			}
		}
		cells := Hermite(y, m, unit, Monotone)
		last := y[0]
		for i := range cells {
			for k := range 65 {
				v := cells[i].At(float64(k) / 64)
				if v < last-1e-12*(1+math.Abs(last)) {
					t.Fatalf("cell %d falls from %v to %v", i, last, v)
				}
				last = v
			}
			if i > 0 && math.Abs(cells[i-1].Slope(1)-cells[i].Slope(0)) > 1e-9 {
				t.Fatalf("derivative jumps at node %d", i)
			}
		}
	})
}

func TestOctaves(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low := rapid.Float64Range(1, 1e6).Draw(t, "low")
		x := low * rapid.Float64Range(1, 1e5).Draw(t, "ratio")
		g := NewOctaves(low)
		i, f := g.Locate(x)
		a, b := g.Node(int(i)), g.Node(int(i)+1)
		if !(a <= x && x < b) || f < 0 || f >= 1 {
			t.Fatalf("%v is not in cell %d, %v to %v", x, i, a, b)
		}
		if back := a + f*(b-a); math.Abs(back-x) > 1e-15*x {
			t.Errorf("place of %v leads to %v", x, back)
		}
	})
	g := NewOctaves(1000)
	for _, bad := range []float64{0, -1, 900, math.Inf(1), math.Inf(-1), math.NaN()} {
		if i, _ := g.Locate(bad); i < 1<<12 && !(bad == 900 && i == math.MaxUint64) {
			t.Errorf("Locate(%v) = %d", bad, i)
		}
	}
}

// unit is the width of a cell where slopes are per cell.
func unit(int) float64 { return 1 }

func TestRoot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		end := rapid.Float64Range(250, 700).Draw(t, "end")
		low := end * rapid.Float64Range(0.3, 0.8).Draw(t, "low")
		high := end * rapid.Float64Range(0.9, 0.999).Draw(t, "high")
		n := rapid.IntRange(1, 100).Draw(t, "cells")
		g := NewRoot(end, low, high, n)
		x := low + (high-low)*rapid.Float64Range(1e-9, 1-1e-9).Draw(t, "x")
		i, f := g.Locate(x)
		if i >= uint64(n) || !(g.Node(int(i)) <= x+1e-9 && x <= g.Node(int(i)+1)+1e-9) || f < 0 || f >= 1 {
			t.Fatalf("%v is not in cell %d, %v to %v", x, i, g.Node(int(i)), g.Node(int(i)+1))
		}
		if e := g.Node(n) - high; math.Abs(e) > 1e-9 {
			t.Errorf("last node is off by %v", e)
		}
	})
	g := NewRoot(400, 200, 399, 10)
	for _, bad := range []float64{199.9, 0, -1e300, 400.1, math.Inf(1), math.Inf(-1), math.NaN()} {
		if i, _ := g.Locate(bad); i < 10 {
			t.Errorf("Locate(%v) = %d", bad, i)
		}
	}
	for i := range 10 {
		e := 1e-6
		j, f := g.Locate(g.Node(i) + e)
		if int(j) != i || math.Abs(f*g.SlopeScale(i)-e) > 1e-3*e {
			t.Errorf("cell %d: scale %v", i, g.SlopeScale(i))
		}
	}
}

// sink keeps the compiler from dropping what a benchmark computes.
var sink float64

func BenchmarkOctaves(b *testing.B) {
	g := NewOctaves(1e4)
	cells := Hermite(make([]float64, 81), make([]float64, 81), unit, Monotone)
	x := 3e5
	for b.Loop() {
		i, t := g.Locate(x)
		if i < uint64(len(cells)) {
			sink = cells[i].At(t)
		}
		x += 1
	}
}

func BenchmarkRoot(b *testing.B) {
	g := NewRoot(370, 200, 369, 64)
	cells := Hermite(make([]float64, 65), make([]float64, 65), unit, Monotone)
	x := 201.0
	for b.Loop() {
		i, t := g.Locate(x)
		if i < uint64(len(cells)) {
			sink = cells[i].At(t)
		}
		x += 1e-6
	}
}
