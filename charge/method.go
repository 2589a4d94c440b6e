package charge

import (
	"strings"

	"github.com/satline/satline/internal/enum"
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

var methodNames = []string{"method not stated", "superheat", "subcooling", "approach", "weigh-in"}

// String returns "superheat", "subcooling", "approach" or "weigh-in".
func (m Method) String() string { return enum.Name(methodNames, m) }

// MarshalText writes the name of the method.
func (m Method) MarshalText() ([]byte, error) { return enum.Text("charge: method", methodNames, m) }

// UnmarshalText reads the name of a method.
func (m *Method) UnmarshalText(text []byte) error {
	return enum.Parse("charge: method", methodNames, text, m)
}

// direction is the sign of the change of the measured value when refrigerant
// is added.
func (m Method) direction() float64 {
	if m == Subcooling {
		return +1
	}
	return -1
}

// A Metering is an expansion device.
type Metering int

// The expansion devices, named as in package satline.
const (
	// FixedRestrictor is a piston, a short tube or a capillary.
	FixedRestrictor Metering = iota + 1
	// TXV is a thermostatic expansion valve.
	TXV
	// EXV is an electronic expansion valve.
	EXV
)

var meteringNames = []string{"not stated", "fixed restrictor", "TXV", "EXV"}

// String returns "fixed restrictor", "TXV" or "EXV".
func (m Metering) String() string { return enum.Name(meteringNames, m) }

// MarshalText writes the name of the device.
func (m Metering) MarshalText() ([]byte, error) {
	return enum.Text("metering device", meteringNames, m)
}

// UnmarshalText reads "fixed restrictor" (or "piston", "orifice", "short tube",
// "capillary"), "TXV" (or "TEV") or "EXV" (or "EEV").
func (m *Metering) UnmarshalText(text []byte) error {
	switch strings.ToLower(strings.TrimSpace(string(text))) {
	case "piston", "orifice", "short tube", "capillary", "capillary tube", "fixed":
		*m = FixedRestrictor
		return nil
	case "tev":
		*m = TXV
		return nil
	case "eev":
		*m = EXV
		return nil
	}
	return enum.Parse("metering device", meteringNames, text, m)
}

// Method returns the method that the charge shows by: superheat for a fixed
// restrictor, subcooling for a valve. A device not stated gets WeighIn, which
// needs none.
func (m Metering) Method() Method {
	switch m {
	case FixedRestrictor:
		return Superheat
	case TXV, EXV:
		return Subcooling
	}
	return WeighIn
}
