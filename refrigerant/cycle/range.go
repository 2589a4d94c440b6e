package cycle

import (
	"fmt"

	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// RangeError is quantity.RangeError: the value, the valid range, what to do.
type RangeError = quantity.RangeError

// readable refuses a reading, or its uncertainty, that no instrument has. One that
// was not taken is nil.
func readable[T interface {
	~float64
	fmt.Stringer
	quantity.Quantity
}](name string, u *quantity.Uncertain[T], low, high T, advice string) error {
	if u == nil {
		return nil
	}
	if err := limit.Within(name, u.Value, low, high, advice); err != nil {
		return err
	}
	return limit.Within(
		"standard uncertainty of the "+name, quantity.Number(u.Std), 0,
		quantity.Number(max(high, -high)), "one standard deviation, in the SI unit of the reading",
	)
}
