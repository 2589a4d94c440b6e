package testbench

import "math"

// unknowns is the most that are solved for at once.
const unknowns = 5

type vector = [unknowns]float64

// newton finds a zero of the first n residuals, which should be near 1 where they are
// badly off, by Newton's method with differences, steps within most, and halving while the
// residuals do not fall.
func newton(n int, x *vector, most, probe vector, f func(*vector) vector) bool {
	r := f(x)
	for range 40 {
		size := norm(n, &r)
		if size < 1e-7 {
			return true
		}
		a := differences(n, x, probe, &r, f)
		step, ok := eliminate(n, &a)
		if !ok {
			return false
		}
		scale := 1.0
		for i := range n {
			scale = min(scale, most[i]/math.Max(math.Abs(step[i]), 1e-300))
		}
		best, bestR, bestSize := shorten(n, x, &step, scale, size, f)
		if !(bestSize < 1e6) || bestSize > 0.9999*size {
			return size < 1e-5
		}
		*x, r = best, bestR
	}
	return norm(n, &r) < 1e-5
}

// differences are the equations of a step: the slopes of the residuals r at x, by a probe of
// each unknown, and what is to be made up for.
func differences(
	n int, x *vector, probe vector, r *vector, f func(*vector) vector,
) (a [unknowns][unknowns + 1]float64) {
	for j := range n {
		y := *x
		y[j] += probe[j]
		s := f(&y)
		for i := range n {
			a[i][j] = (s[i] - r[i]) / probe[j]
		}
	}
	for i := range n {
		a[i][n] = -r[i]
	}
	return a
}

// shorten halves a step from x until the residuals fall below size by enough, and returns the
// best place met, with its residuals and their size.
func shorten(
	n int, x, step *vector, scale, size float64, f func(*vector) vector,
) (best, bestR vector, bestSize float64) {
	best, bestSize = *x, math.Inf(1)
	for range 7 {
		y := *x
		for i := range n {
			y[i] += scale * step[i]
		}
		s := f(&y)
		if m := norm(n, &s); m < bestSize {
			best, bestSize, bestR = y, m, s
		}
		if bestSize < (1-0.1*scale)*size {
			break
		}
		scale /= 2
	}
	return best, bestR, bestSize
}

func norm(n int, r *vector) float64 {
	sum := 0.0
	for i := range n {
		sum += r[i] * r[i]
	}
	if math.IsNaN(sum) {
		return math.Inf(1)
	}
	return math.Sqrt(sum)
}

// eliminate solves n linear equations with partial pivoting.
func eliminate(n int, a *[unknowns][unknowns + 1]float64) (x vector, ok bool) {
	for k := range n {
		p := k
		for i := k + 1; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[p][k]) {
				p = i
			}
		}
		if !(math.Abs(a[p][k]) > 1e-14) {
			return x, false
		}
		a[k], a[p] = a[p], a[k]
		for i := k + 1; i < n; i++ {
			m := a[i][k] / a[k][k]
			for j := k; j <= n; j++ {
				a[i][j] -= m * a[k][j]
			}
		}
	}
	for k := n - 1; k >= 0; k-- {
		x[k] = a[k][n]
		for j := k + 1; j < n; j++ {
			x[k] -= a[k][j] * x[j]
		}
		x[k] /= a[k][k]
	}
	return x, true
}
