// Package normal is the standard normal distribution, and the chances that
// follow from it.
package normal

import "math"

// Below is the standard normal distribution function.
func Below(z float64) float64 { return math.Erfc(-z/math.Sqrt2) / 2 }

// Chances returns the probabilities that a normal value with mean d and standard
// deviation std lies below −tolerance, within, and above +tolerance. The edges
// count as within.
func Chances(d, std, tolerance float64) (below, within, above float64) {
	if std == 0 {
		switch {
		case d < -tolerance:
			return 1, 0, 0
		case d > tolerance:
			return 0, 0, 1
		}
		return 0, 1, 0
	}
	below = Below((-tolerance - d) / std)
	above = Below((d - tolerance) / std)
	return below, max(0, 1-below-above), above
}
