package cycle

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// RangeError is quantity.RangeError: the value, the valid range, what to do.
type RangeError = quantity.RangeError

// readable refuses a reading, or its uncertainty, that no instrument has. One that
// was not taken is nil.
func readable[T quantity.Quantity](
	name string, u *quantity.Uncertain[T], low, high T, advice string,
) error {
	if u == nil {
		return nil
	}
	return limit.Reading(name, *u, low, high, advice)
}
