package charge

import (
	"fmt"

	"github.com/satline/satline/internal/base/enum"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/quantity/fact"
	"github.com/satline/satline/refrigerant"
)

// A RecoveryClass groups refrigerants by their pressure, as the rules on
// recovery do.
type RecoveryClass int

// The classes of 40 CFR 82.152, by the saturation pressure of the liquid at 104 °F.
const (
	LowPressure      RecoveryClass = iota + 1 // below 45 psia
	MediumPressure                            // 45 to 170 psia
	HighPressure                              // 170 to 355 psia
	VeryHighPressure                          // above 355 psia, or no liquid at 104 °F
)

var recoveryClassNames = []string{
	"not-stated", "low-pressure", "medium-pressure", "high-pressure", "very-high-pressure",
}

// String returns the class in words.
func (c RecoveryClass) String() string { return enum.Name(recoveryClassNames, c) }

// MarshalText writes the class in words.
func (c RecoveryClass) MarshalText() ([]byte, error) {
	return enum.Text("recovery class", recoveryClassNames, c)
}

// UnmarshalText reads what MarshalText writes.
func (c *RecoveryClass) UnmarshalText(text []byte) error {
	return enum.Parse("recovery class", recoveryClassNames, text, c)
}

// A RecoveryLevel is how far a circuit is pumped down before it is opened.
type RecoveryLevel struct {
	Class RecoveryClass `json:"class"`
	// To is the absolute pressure to reach. The rule counts it from the
	// standard atmosphere.
	To quantity.Pressure `json:"to"`
	// InchesOfVacuum is the same as the rule words it, in inches of mercury
	// below the standard atmosphere.
	InchesOfVacuum float64     `json:"inchesOfVacuum"`
	Source         fact.Source `json:"source"`
}

// Fact is the level for a record, "result.recovery": the absolute pressure to reach.
func (r RecoveryLevel) Fact() fact.Fact {
	return fact.New("result.recovery", fact.Amount("to", r.To))
}

// RecoverTo returns the level to which a machine with a whole charge of a
// refrigerant is evacuated before it is opened or scrapped, with recovery
// equipment made since November 15, 1993: 40 CFR 82.156, Table 1. Small
// appliances with at most 5 lb, sealed in the factory, and vehicles have rules
// of their own, and so have leaking machines. Local rules come before it.
//
// Errors are *RangeError, and refrigerant.ErrNoRefrigerant.
func RecoverTo(fluid *refrigerant.Refrigerant, whole quantity.Mass) (RecoveryLevel, error) {
	if err := checkFluid(fluid); err != nil {
		return RecoveryLevel{}, err
	}
	const most = quantity.Mass(100e3)
	if !(whole > 0 && whole <= most) {
		return RecoveryLevel{}, &RangeError{
			Quantity: "whole charge of the machine",
			Value:    whole,
			Max:      most,
			Advice:   "it is above zero: read it on the label",
		}
	}
	out := RecoveryLevel{Class: VeryHighPressure, Source: recoveryRule}
	if classTemperature.value < fluid.Critical().Temperature {
		p, err := fluid.BubblePressure(classTemperature.value)
		if err != nil {
			return RecoveryLevel{}, err
		}
		switch {
		case p < lowPressureBelow.value:
			out.Class = LowPressure
		case p < mediumPressureBelow.value:
			out.Class = MediumPressure
		case p <= highPressureBelow.value:
			out.Class = HighPressure
		}
	}
	large := whole >= largeCharge.value
	switch {
	case out.Class == LowPressure:
		out.To = lowPressureTo.value
		out.InchesOfVacuum = (quantity.StandardAtmosphere - out.To).InchesHg()
		return out, nil
	case out.Class == MediumPressure && large:
		out.InchesOfVacuum = mediumLargeVacuum.value
	case out.Class == MediumPressure:
		out.InchesOfVacuum = mediumVacuum.value
	case out.Class == HighPressure && large:
		out.InchesOfVacuum = highLargeVacuum.value
	}
	out.To = quantity.StandardAtmosphere - quantity.InchesHg(out.InchesOfVacuum)
	return out, nil
}

// A MixedError says that a tank holds another refrigerant.
type MixedError struct {
	Holds, Recovered string // designations
}

// Error implements error.
func (e *MixedError) Error() string {
	return fmt.Sprintf(
		"charge: the tank holds %s and the machine %s: never mix them; use another tank, "+
			"evacuated or with the same refrigerant, "+
			"because a mixture has a pressure of its own and cannot be reclaimed",
		e.Holds, e.Recovered,
	)
}

// TankRoom returns how much refrigerant may still be recovered into a tank that
// shows gross on the scale: what refrigerant.Cylinder.RoomFor allows, and
// nothing where the tank holds another refrigerant. A nil holds is an empty,
// evacuated tank. The room of an overfilled tank is zero.
//
// The error is a *MixedError or a *RangeError.
func TankRoom(
	tank refrigerant.Cylinder, holds, recovered *refrigerant.Refrigerant, gross quantity.Mass,
) (quantity.Mass, error) {
	if err := checkFluid(recovered); err != nil {
		return 0, err
	}
	if holds != nil && holds.Designation() != recovered.Designation() {
		return 0, &MixedError{holds.Designation(), recovered.Designation()}
	}
	room, err := tank.RoomFor(recovered, gross)
	if err != nil {
		return 0, err
	}
	return max(room.MayTake, 0), nil
}
