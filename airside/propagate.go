package airside

import (
	"encoding/json"
	"fmt"
	"math"

	"github.com/satline/satline/quantity"
)

// maxInputs bounds the readings that one result is worked out from.
const maxInputs = 8

// inputs are readings in SI.
type inputs [maxInputs]float64

// outputs are results in SI; those not used stay zero.
type outputs [6]float64

// contributions hold, by input and output, the standard uncertainty that the
// input alone gives the output (GUM 5.1.3), with its sign.
type contributions [maxInputs]outputs

// propagate evaluates f at x and moves each input by a hundredth of its standard
// uncertainty either way for its sensitivity. At the border of f, where one of
// the two is no state of air, the other is taken alone.
func propagate(x, std inputs, f func(inputs) (outputs, error)) (outputs, contributions, error) {
	const fraction = 0.01
	var c contributions
	y, err := f(x)
	if err != nil {
		return y, c, err
	}
	for i, s := range std {
		if s == 0 {
			continue
		}
		up, down := x, x
		up[i] += fraction * s
		down[i] -= fraction * s
		yu, errUp := f(up)
		yd, errDown := f(down)
		span := 2 * fraction
		switch {
		case errUp != nil && errDown != nil:
			return y, c, errUp
		case errUp != nil:
			yu, span = y, fraction
		case errDown != nil:
			yd, span = y, fraction
		}
		for k := range y {
			c[i][k] = (yu[k] - yd[k]) / span
		}
	}
	return y, c, nil
}

// std combines the contributions to output k (GUM, equation 10).
func (c *contributions) std(k int) float64 {
	sum := 0.0
	for i := range c {
		sum += c[i][k] * c[i][k]
	}
	return math.Sqrt(sum)
}

// A Term is the part of one reading in the uncertainty of a result.
type Term[T quantity.Quantity] struct {
	// Reading names it as the fields of a visit are named: "returnWetBulb".
	Reading string `json:"reading"`
	// Contribution is the standard uncertainty that the reading alone would give
	// the result (GUM 5.1.3).
	Contribution T `json:"contribution"`
}

// A Budget lists where the uncertainty of a result comes from. The zero Budget
// has no terms.
type Budget[T quantity.Quantity] struct {
	terms [maxInputs]Term[T]
	n     int
}

func budgetOf[T quantity.Quantity](
	c *contributions,
	k int,
	names *[maxInputs]string,
) (b Budget[T]) {
	for i := range c {
		if v := math.Abs(c[i][k]); v > 0 {
			b.terms[b.n] = Term[T]{names[i], T(v)}
			b.n++
		}
	}
	return b
}

// Terms returns the terms in the order of the readings.
func (b Budget[T]) Terms() []Term[T] { return append([]Term[T](nil), b.terms[:b.n]...) }

// Largest returns the reading to better first; false where no reading has an
// uncertainty.
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
func (b Budget[T]) MarshalJSON() ([]byte, error) { return json.Marshal(b.terms[:b.n]) }

// UnmarshalJSON reads what MarshalJSON writes: at most eight terms.
func (b *Budget[T]) UnmarshalJSON(text []byte) error {
	var terms []Term[T]
	if err := json.Unmarshal(text, &terms); err != nil {
		return err
	}
	if len(terms) > maxInputs {
		return fmt.Errorf(
			"airside: an uncertainty budget of %d terms; the longest has %d",
			len(terms),
			maxInputs,
		)
	}
	*b = Budget[T]{n: len(terms)}
	copy(b.terms[:], terms)
	return nil
}
