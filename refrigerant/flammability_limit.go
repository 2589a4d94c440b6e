package refrigerant

import (
	"errors"

	"github.com/satline/satline/quantity"
)

// A FlammabilityLimit is the least of a refrigerant in air that carries a flame.
type FlammabilityLimit struct {
	// Density is the mass of refrigerant per volume of air, at 25 °C and 101.325 kPa.
	Density quantity.Density `json:"density"`
	Source  string           `json:"source"`
}

// ErrNotFlammable is returned where a limit is asked of a refrigerant that carries no flame.
var ErrNotFlammable = errors.New(
	"the refrigerant is of a group that carries no flame and has no flammability limit",
)

// ErrNoFlammabilityLimit is returned for a refrigerant that burns, or may burn, and whose
// limit is not in the table.
var ErrNoFlammabilityLimit = errors.New(
	"no flammability limit of this refrigerant is carried; take it from the safety data sheet, " +
		"or its room area from the label",
)

const (
	limitRead   = "ISO 817, as manufacturers' instructions reprint it"
	limitMemory = "ISO 817:2014 with its amendments, from memory"
)

// flammabilityLimits are the LFL of ISO 817 in kg/m³. Where editions or the North American
// standard differ, the lower figure stands: it is the safe one.
var flammabilityLimits = [...]struct {
	designation string
	limit       quantity.Density
	source      string
}{
	{"R-32", 0.307, limitRead},
	{"R-142b", 0.329, limitMemory},
	{"R-143a", 0.282, limitMemory},
	{"R-152a", 0.130, limitMemory},
	{"R-170", 0.038, limitMemory},
	{"R-290", 0.038, limitRead},
	{"R-452B", 0.309, limitMemory},
	{"R-454A", 0.278, limitMemory},
	{"R-454B", 0.296, limitMemory},
	{"R-454C", 0.289, limitMemory},
	{"R-455A", 0.423, limitMemory},
	{"R-457A", 0.216, limitMemory},
	{"R-600", 0.038, limitMemory},
	{"R-600a", 0.038, limitMemory},
	{"R-601", 0.035, limitMemory},
	{"R-601a", 0.038, limitMemory},
	{"R-717", 0.116, limitMemory},
	{"R-1234yf", 0.289, limitMemory},
	{"R-1234ze(E)", 0.303, limitMemory},
	{"R-1270", 0.040, limitMemory},
	{"R-E170", 0.064, limitMemory},
}

// FlammabilityLimit returns the lower flammability limit of r. The error is
// ErrNotFlammable, ErrNoFlammabilityLimit or ErrNoRefrigerant.
func (r *Refrigerant) FlammabilityLimit() (FlammabilityLimit, error) {
	switch {
	case len(r.components()) == 0:
		return FlammabilityLimit{}, ErrNoRefrigerant
	case !r.Flammable():
		return FlammabilityLimit{}, ErrNotFlammable
	}
	for _, l := range flammabilityLimits {
		if l.designation == r.designation && r.SafetyGroup() != Unclassified {
			return FlammabilityLimit{l.limit, l.source}, nil
		}
	}
	return FlammabilityLimit{}, ErrNoFlammabilityLimit
}
