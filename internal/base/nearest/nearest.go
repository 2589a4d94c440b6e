// Package nearest finds the differences from an ordinary machine by which a model comes nearest
// to what was read, and how far they may be off.
package nearest

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Misses is by how many standard deviations a model with differences misses what was read, and
// the differences what is usual; those have to be among them.
type Misses func(by []float64) ([]float64, error)

const step = 1e-3 // of a difference, for slopes

// Find returns the differences with the least sum of squared misses, by Gauss's and Newton's
// method, damped; none is taken beyond most, in either direction. The error is that of misses.
func Find(misses Misses, most []float64) (by []float64, err error) {
	by = make([]float64, len(most))
	best, err := misses(by)
	if err != nil {
		return nil, err
	}
	const rounds = 8
	for range rounds {
		j, err := slopes(misses, by, best)
		if err != nil {
			return nil, err
		}
		// The differences are among what may be missed, so that no way is without a slope and
		// the normal equations are sound: readings some hundred times as steep square to some
		// 1e5, of the 1e16 that a float64 tells apart.
		var normal mat.SymDense
		normal.SymOuterK(1, j.T())
		var right, move mat.VecDense
		right.MulVec(j.T(), mat.NewVecDense(len(best), best))
		var factor mat.Cholesky
		if !factor.Factorize(&normal) || factor.SolveVecTo(&move, &right) != nil {
			break
		}
		better := false
		for scale := 1.0; scale > 0.05 && !better; scale /= 2 {
			next := make([]float64, len(by))
			for i := range next {
				next[i] = math.Min(math.Max(by[i]-scale*move.AtVec(i), -most[i]), most[i])
			}
			if m, err := misses(next); err == nil && square(m) < square(best)-1e-9 {
				by, best, better = next, m, true
			}
		}
		if !better {
			break
		}
	}
	return by, nil
}

// Around returns where else the differences may be: in ways that have nothing to do with each
// other, each one standard deviation away from by. It is nil where misses are no numbers. The
// error is that of misses.
func Around(misses Misses, by []float64) (others [][]float64, err error) {
	best, err := misses(by)
	if err != nil {
		return nil, err
	}
	j, err := slopes(misses, by, best)
	if err != nil {
		return nil, err
	}
	var information, covariance mat.SymDense
	information.SymOuterK(1, j.T())
	var factor mat.Cholesky
	if !factor.Factorize(&information) || factor.InverseTo(&covariance) != nil ||
		!factor.Factorize(&covariance) {
		return nil, nil
	}
	var u mat.TriDense // the covariance is its transpose times it
	factor.UTo(&u)
	for i := range by {
		other := make([]float64, len(by))
		for k := range by {
			if other[k] = by[k]; k >= i {
				other[k] += u.At(i, k)
			}
		}
		others = append(others, other)
	}
	return others, nil
}

func slopes(misses Misses, by, best []float64) (*mat.Dense, error) {
	j := mat.NewDense(len(best), len(by), nil)
	moved := make([]float64, len(by))
	for i := range by {
		copy(moved, by)
		moved[i] += step
		m, err := misses(moved)
		if err != nil {
			return nil, err
		}
		for row := range m {
			j.Set(row, i, (m[row]-best[row])/step)
		}
	}
	return j, nil
}

func square(m []float64) (sum float64) {
	for _, x := range m {
		sum += x * x
	}
	return sum
}
