package quantity

import "fmt"

// Number is a plain number for the fields of a RangeError whose quantity has
// no unit: a relative humidity, a vapor quality, a mole fraction.
type Number float64

// String returns the number with up to six significant digits.
func (n Number) String() string { return fmt.Sprintf("%.6g", float64(n)) }

// An UncertainNumber is a number without a unit, such as a compression ratio or a COP, with its
// standard uncertainty. What people write in percent is an Uncertain of [Ratio].
type UncertainNumber struct {
	Value float64 `json:"value"`
	Std   float64 `json:"std"`
}
