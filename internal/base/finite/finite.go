// Package finite keeps what is no number, or infinite, out of answers that have no error
// beside them.
package finite

import "math"

// Is reports whether v is a number and finite.
func Is[T ~float64](v T) bool { return !math.IsNaN(float64(v)) && !math.IsInf(float64(v), 0) }

// OrZero returns v, and 0 where that is not finite.
func OrZero[T ~float64](v T) T {
	if Is(v) {
		return v
	}
	return 0
}
