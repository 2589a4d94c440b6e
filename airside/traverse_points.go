package airside

import "github.com/satline/satline/quantity"

// Shape is that of a duct's section.
type Shape int

// The shapes.
const (
	// Rectangular ducts take the points along each side: 5 × 5 in a duct up to
	// 30 in. a side, 6 or 7 up to 36 in. and beyond.
	Rectangular Shape = iota + 1
	// Round ducts take the points along three diameters, 60° apart.
	Round
)

// TraversePoints returns where along a side of a rectangular duct (5, 6 or 7
// points), or along a diameter of a round one (6, 8 or 10), to read, as shares
// of the side or the diameter from one wall. The mean of readings there is the
// mean of the section: log-Tchebycheff and log-linear rules, ISO 3966 and
// ANSI/ASHRAE Standard 111 (from memory). The error is a *RangeError.
func TraversePoints(shape Shape, points int) ([]float64, error) {
	table, advice := rectangularPoints, "a side of a rectangular duct has 5, 6 or 7"
	if shape == Round {
		table, advice = roundPoints, "a diameter of a round duct has 6, 8 or 10"
	}
	half, ok := table[points]
	if !ok || shape != Rectangular && shape != Round {
		return nil, &RangeError{
			Quantity: "points of a traverse",
			Value:    quantity.Number(points),
			Advice:   advice,
		}
	}
	out := make([]float64, points)
	for i, x := range half {
		out[i], out[points-1-i] = x, 1-x
	}
	return out, nil
}

// Half of each rule; the other half lies opposite.
var (
	rectangularPoints = map[int][]float64{
		5: {0.074, 0.288, 0.500},
		6: {0.061, 0.235, 0.437},
		7: {0.053, 0.203, 0.366, 0.500},
	}
	roundPoints = map[int][]float64{
		6:  {0.032, 0.135, 0.321},
		8:  {0.021, 0.117, 0.184, 0.345},
		10: {0.019, 0.077, 0.153, 0.217, 0.361},
	}
)
