package charge

import (
	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/refrigerant"
)

// A Method is a way to judge or set a charge.
type Method int

// The methods.
const (
	// Superheat of the suction line, for fixed restrictors. More charge lowers it.
	Superheat Method = iota + 1
	// Subcooling of the liquid line, for valves. More charge raises it.
	Subcooling
	// Approach is the liquid line above the outdoor air, where a label gives
	// it. More charge lowers it.
	Approach
	// WeighIn puts the label charge in by scale, after evacuation.
	WeighIn
)

var methodNames = []string{"not-stated", "superheat", "subcooling", "approach", "weigh-in"}

// String returns "superheat", "subcooling", "approach" or "weigh-in".
func (m Method) String() string { return enum.Name(methodNames, m) }

// MarshalText writes the name of the method.
func (m Method) MarshalText() ([]byte, error) { return enum.Text("method", methodNames, m) }

// UnmarshalText reads the name of a method.
func (m *Method) UnmarshalText(text []byte) error {
	return enum.Parse("method", methodNames, text, m)
}

// direction is the sign of the change of the measured value when refrigerant
// is added.
func (m Method) direction() float64 {
	if m == Subcooling {
		return +1
	}
	return -1
}

// MethodFor returns the method that the charge shows by: superheat for a fixed
// restrictor, subcooling for a valve. A device not stated gets WeighIn, which
// needs none.
func MethodFor(m refrigerant.Metering) Method {
	switch {
	case m.Fixed():
		return Superheat
	case m == refrigerant.TXV, m == refrigerant.EXV:
		return Subcooling
	}
	return WeighIn
}
