package quantity

import (
	"encoding/json"
	"math"
)

// A Term is the part of one reading in the uncertainty of a result.
type Term[T Quantity] struct {
	// Reading names it as the fields of a visit are named, "returnWetBulb", or says what else
	// the doubt comes from, "atmosphere".
	Reading string `json:"reading"`
	// Contribution is the standard uncertainty that the reading alone would give
	// the result (GUM 5.1.3).
	Contribution T `json:"contribution"`
}

// mostTerms bounds the readings that one result is worked out from.
const mostTerms = 8

// A Budget lists where the uncertainty of a result comes from: independent terms, combined to
// first order (GUM 5.1.2, equation 10). The zero Budget has no terms. It is an array, so that
// it needs no allocation.
type Budget[T Quantity] struct {
	terms [mostTerms]Term[T]
	n     int
}

// Add takes a term; it is left out where it contributes nothing or no number, or where there
// are eight already.
func (b *Budget[T]) Add(reading string, contribution T) {
	c := math.Abs(float64(contribution))
	if b.n < mostTerms && c > 0 && !math.IsInf(c, 0) {
		b.terms[b.n] = Term[T]{reading, T(c)}
		b.n++
	}
}

// Join takes the terms of another budget of the same result.
func (b *Budget[T]) Join(other Budget[T]) {
	for _, t := range other.terms[:other.n] {
		b.Add(t.Reading, t.Contribution)
	}
}

// Terms returns the terms in the order of the readings.
func (b Budget[T]) Terms() []Term[T] { return append([]Term[T](nil), b.terms[:b.n]...) }

// Std returns the combined standard uncertainty.
func (b Budget[T]) Std() T {
	sum := 0.0
	for _, t := range b.terms[:b.n] {
		sum = math.Hypot(sum, float64(t.Contribution))
	}
	return T(min(sum, math.MaxFloat64))
}

// Largest returns the reading to better first; false where there is none.
func (b Budget[T]) Largest() (Term[T], bool) {
	var best Term[T]
	for _, t := range b.terms[:b.n] {
		if t.Contribution > best.Contribution {
			best = t
		}
	}
	return best, b.n > 0
}

// MarshalJSON writes the terms as an array.
func (b Budget[T]) MarshalJSON() ([]byte, error) { return json.Marshal(b.JSONForm()) }

// JSONForm returns what MarshalJSON writes, for whoever writes its quantities in other units.
func (b Budget[T]) JSONForm() any { return b.terms[:b.n] }

// UnmarshalJSON reads what MarshalJSON writes: at most eight terms, else the error is a
// *RangeError.
func (b *Budget[T]) UnmarshalJSON(text []byte) error {
	var terms []Term[T]
	if err := json.Unmarshal(text, &terms); err != nil {
		return err
	}
	if len(terms) > mostTerms {
		return &RangeError{
			Quantity: "terms of an uncertainty budget", Value: Number(len(terms)),
			Max: Number(mostTerms), Advice: "no result rests on more readings",
		}
	}
	*b = Budget[T]{}
	for _, t := range terms {
		b.Add(t.Reading, t.Contribution)
	}
	return nil
}
