package airside

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/psychro"
	"github.com/satline/satline/quantity"
)

// DesignAirflow returns the cooling airflow that a load asks for, in the manner
// of ACCA Manual S (from memory): sensible load over the sensible factor times a
// temperature difference between room and supply, which is 21 °F for a sensible
// heat ratio below 0.80, 19 °F up to 0.85 and 17 °F above. Where the manual has
// 1.1 and an altitude table, the factor is that of the room air itself. The error
// is a *RangeError.
func DesignAirflow(sensible, latent quantity.Power, room psychro.Air) (quantity.VolumeFlow, error) {
	if err := limit.Within(
		"sensible load", sensible, quantity.Watts(1), quantity.Kilowatts(10000),
		"it is the sensible heat gain of the design hour",
	); err != nil {
		return 0, err
	}
	if err := limit.Within(
		"latent load", latent, 0, quantity.Kilowatts(10000),
		"it is the latent heat gain of the design hour",
	); err != nil {
		return 0, err
	}
	f, err := FactorsOf(room)
	if err != nil {
		return 0, err
	}
	difference := 17.0 // °F
	switch ratio := float64(sensible / (sensible + latent)); {
	case ratio < 0.80:
		difference = 21
	case ratio <= 0.85:
		difference = 19
	}
	return quantity.CFM(sensible.BtuPerHour() / (f.Sensible * difference)), nil
}

// FrictionRate returns the static pressure that a duct may lose per 100 ft, in
// the manner of ACCA Manual D (from memory): what is left of the
// external static pressure after coil, filter, registers, grilles and dampers,
// over the total effective length of the longest run. Rates from 0.06 to 0.18
// in. w.c. make workable ducts. The error is a *RangeError where nothing is left.
func FrictionRate(
	external quantity.StaticPressure, parts []quantity.StaticPressure,
	effectiveLength quantity.Length,
) (quantity.StaticPressure, error) {
	left := external
	for _, p := range parts {
		if err := limit.Within(
			"drop of a part", p, 0, 2500, "take it from the part's table at the design airflow",
		); err != nil {
			return 0, err
		}
		left -= p
	}
	if err := limit.Within(
		"static pressure left for the ducts", left, 0.1, 2500,
		"the parts take all that the blower has: choose freer parts or a stronger blower",
	); err != nil {
		return 0, err
	}
	if err := limit.Within(
		"total effective length", effectiveLength, quantity.Feet(1), quantity.Feet(5000),
		"it is the length of the longest supply and return run with the equivalent length of "+
			"every fitting",
	); err != nil {
		return 0, err
	}
	return left * quantity.StaticPressure(100/effectiveLength.Feet()), nil
}
