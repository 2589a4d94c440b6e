package electrical

import (
	"math"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// RangeError is the error of every value the package refuses.
type RangeError = quantity.RangeError

// Unbalance returns how unequal the three voltages or currents of three phases are: the
// largest deviation from their mean over the mean (NEMA MG 1, 14.36). Of voltages, 1 % is what
// a motor takes, and above 5 % it is not to run. The error is a *RangeError: there are not
// three, or one is below zero or above 100 kV or 100 kA, or all are zero.
func Unbalance[T quantity.Quantity](of [3]T) (quantity.Ratio, error) {
	sum := 0.0
	for _, v := range of {
		const largest = quantity.Number(1e5)
		if err := limit.Within("reading of a phase", quantity.Number(v), 0, largest,
			"read line to line for a voltage, each line for a current"); err != nil {
			return 0, err
		}
		sum += float64(v)
	}
	mean := sum / 3
	if mean < 1e-6 {
		return 0, &RangeError{Quantity: "mean of the three phases", Value: quantity.Number(mean),
			Min: quantity.Number(1e-6), Advice: "nothing is read on any phase: is it switched on?"}
	}
	off := 0.0
	for _, v := range of {
		off = max(off, math.Abs(float64(v)-mean))
	}
	return quantity.Ratio(off / mean), nil
}

// derating holds the factors of NEMA MG 1-2011, figure 14-1, at 0 % to 5 % (read off the
// curve, from memory).
var derating = [...]float64{1, 0.99, 0.95, 0.88, 0.82, 0.75}

// Derating returns the part of its rated power that a three-phase motor may give on unbalanced
// voltages (NEMA MG 1, figure 14-1, from memory), by a straight line from one per cent to the
// next. The error is a *RangeError below 0 % and above 5 %, where it is not to run at all.
func Derating(unbalance quantity.Ratio) (quantity.Ratio, error) {
	if err := limit.Within("voltage unbalance", unbalance, 0, mostUnbalance,
		"above five percent no motor is to run: have the supply mended"); err != nil {
		return 0, err
	}
	at := max(0, min(float64(unbalance)*100, float64(len(derating)-1)))
	i := min(int(at), len(derating)-2)
	return quantity.Ratio(derating[i] + (at-float64(i))*(derating[i+1]-derating[i])), nil
}

// unbalanceOf is that of three readings; false where there are not three, or all are zero.
func unbalanceOf[T quantity.Quantity](of []quantity.Uncertain[T]) (quantity.Ratio, bool) {
	if len(of) != 3 {
		return 0, false
	}
	u, err := Unbalance([3]T{of[0].Value, of[1].Value, of[2].Value})
	return u, err == nil
}
