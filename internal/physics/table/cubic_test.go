package table

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// A Hermite cubic reproduces a cubic exactly.
func TestHermiteReproducesCubics(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := rapid.Float64Range(-10, 10)
		a := [4]float64{c.Draw(t, "a0"), c.Draw(t, "a1"), c.Draw(t, "a2"), c.Draw(t, "a3")}
		f := func(x float64) float64 { return a[0] + x*(a[1]+x*(a[2]+x*a[3])) }
		d := func(x float64) float64 { return a[1] + x*(2*a[2]+x*3*a[3]) }
		if monotone([]float64{f(0), f(1), f(2)}, []float64{d(0), d(1), d(2)}) {
			return // it may turn between nodes, and must not
		}
		cells := Hermite([]float64{f(0), f(1), f(2)}, []float64{d(0), d(1), d(2)}, unit)
		x := rapid.Float64Range(0, 2).Draw(t, "x")
		i := min(int(x), 1)
		if got := cells[i].At(x - float64(i)); math.Abs(got-f(x)) > 1e-12*(1+math.Abs(f(x))) {
			t.Errorf("f(%v) = %v, want %v", x, got, f(x))
		}
		if got := cells[i].Slope(x - float64(i)); math.Abs(got-d(x)) > 1e-12*(1+math.Abs(d(x))) {
			t.Errorf("f'(%v) = %v, want %v", x, got, d(x))
		}
	})
}

// However steep the slopes it is given, a curve through rising nodes stays between its nodes, rises
// where they rise, and keeps a continuous derivative.
func TestMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 12).Draw(t, "n")
		y, m := make([]float64, n), make([]float64, n)
		for i := range y {
			m[i] = rapid.Float64Range(0, 200).Draw(t, "slope")
			if i > 0 {
				y[i] = y[i-1] + rapid.Float64Range(0, 10).Draw(t, "step")
			}
		}
		cells := Hermite(y, m, unit)
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
		high := low * rapid.Float64Range(1.01, 1e5).Draw(t, "ratio")
		x := low + (high-low)*rapid.Float64Range(1e-12, 1-1e-12).Draw(t, "x")
		g := NewOctaves(low, high)
		if e := g.Node(g.Cells())/high - 1; math.Abs(e) > 1e-15 || g.Node(0) > low*(1+1e-15) ||
			g.Node(1) < low*(1-1e-15) {
			t.Fatalf(
				"grid of %v to %v has nodes %v, %v, ... %v", low, high, g.Node(0), g.Node(1),
				g.Node(g.Cells()),
			)
		}
		i, f := g.Locate(x)
		a, b := g.Node(int(i)), g.Node(int(i)+1)
		if i >= uint64(g.Cells()) || !(a <= x*(1+1e-15) && x < b*(1+1e-15)) || f < 0 || f >= 1 {
			t.Fatalf("%v is not in cell %d, %v to %v", x, i, a, b)
		}
		if back := a + f*(b-a); math.Abs(back-x) > 1e-15*b {
			t.Errorf("place of %v leads to %v", x, back)
		}
	})
	g := NewOctaves(1000, 1e6)
	for _, bad := range []float64{0, -1, 800, 1e6, 1e300, math.Inf(1), math.Inf(-1), math.NaN()} {
		if i, _ := g.Locate(bad); i < uint64(g.Cells()) {
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
		if i >= uint64(n) || !(g.Node(int(i)) <= x+1e-9 && x <= g.Node(int(i)+1)+1e-9) || f < 0 ||
			f >= 1 {
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
		if j, f := g.Locate(g.At(float64(i) + 0.25)); int(j) != i || math.Abs(f-0.25) > 1e-9 {
			t.Errorf("At(%d.25) is in cell %d at %v", i, j, f)
		}
	}
}

// sink keeps the compiler from dropping what a benchmark computes.
var sink float64

func BenchmarkOctaves(b *testing.B) {
	g := NewOctaves(1e4, 4e6)
	cells := Hermite(make([]float64, g.Cells()+1), make([]float64, g.Cells()+1), unit)
	x := 3e5
	for b.Loop() {
		i, t := g.Locate(x)
		if i < uint64(len(cells)) {
			sink = cells[i].At(t)
		}
		if x += 1; x > 3e6 {
			x = 2e4
		}
	}
}

func BenchmarkRoot(b *testing.B) {
	g := NewRoot(370, 200, 369, 64)
	cells := Hermite(make([]float64, 65), make([]float64, 65), unit)
	x := 201.0
	for b.Loop() {
		i, t := g.Locate(x)
		if i < uint64(len(cells)) {
			sink = cells[i].At(t)
		}
		x += 1e-6
	}
}
