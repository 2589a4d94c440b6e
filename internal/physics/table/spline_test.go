package table

import (
	"math"
	"testing"
)

// A spline through a polynomial of third degree is that polynomial, ends included.
func TestLineFollowsCubic(t *testing.T) {
	cubic := func(x float64) float64 { return 2 - 3*x + 0.5*x*x - 0.25*x*x*x }
	slope := func(x float64) float64 { return -3 + x - 0.75*x*x }
	nodes := make([]float64, 9)
	for i := range nodes {
		nodes[i] = cubic(float64(i))
	}
	l := NewLine(nodes)
	for x := 0.0; x <= 8; x += 0.125 {
		i := min(int(x), 7)
		w, s := Weights(x-float64(i)), SlopeWeights(x-float64(i))
		if got := l.At(i, &w); math.Abs(got-cubic(x)) > 1e-12 {
			t.Errorf("at %g: %g, want %g", x, got, cubic(x))
		}
		if got := l.At(i, &s); math.Abs(got-slope(x)) > 1e-12 {
			t.Errorf("slope at %g: %g, want %g", x, got, slope(x))
		}
	}
}

// A sheet follows what is smooth to the fourth power of the step, and its cells are those of
// its columns.
func TestSheetConverges(t *testing.T) {
	f := func(x, y float64) [Columns]float64 {
		return [Columns]float64{math.Exp(x) * math.Cos(y), math.Sin(x) + y*y, 1 / (2 + x + y*y)}
	}
	off := func(n int) float64 {
		step := 1 / float64(n)
		nodes := make([][][Columns]float64, n+1)
		for i := range nodes {
			nodes[i] = make([][Columns]float64, n+1)
			for j := range nodes[i] {
				nodes[i][j] = f(float64(i)*step, float64(j)*step)
			}
		}
		s := NewSheet(nodes)
		worst := 0.0
		for i := range n {
			for j := range n {
				for _, in := range []float64{0, 0.31, 0.77, 1} {
					row, place := Weights(in), Weights(1-in)
					want := f((float64(i)+in)*step, (float64(j)+1-in)*step)
					x, y, z := s.At(i, &row, j, &place)
					for c, got := range [...]float64{x, y, z} {
						worst = max(worst, math.Abs(got-want[c]))
						cell := s.Cell(c, i, &row, j)
						sum := 0.0
						for k := range cell {
							sum += cell[k] * place[k]
						}
						if math.Abs(sum-got) > 1e-12 {
							t.Errorf("cell %g, value %g", sum, got)
						}
					}
				}
			}
		}
		return worst
	}
	if a, b := off(8), off(16); !(a < 1e-4 && b < a/12) {
		t.Errorf("off by %g, and by %g at half the step", a, b)
	}
}
