package airside

import (
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

func budgetOf[T quantity.Quantity](
	c *contributions, k int, names *[maxInputs]string,
) (b quantity.Budget[T]) {
	for i := range c {
		b.Add(names[i], T(c[i][k]))
	}
	return b
}
