package airside

import (
	"github.com/satline/satline/internal/base/limit"
	"github.com/satline/satline/quantity"
)

// splitPerThinness is the relative growth of a split per relative loss of
// pressure at the same CFM, with half of it as its standard uncertainty.
const (
	splitPerThinness    = 0.29
	splitPerThinnessStd = 0.145
)

// SplitAltitude returns what thin air adds to a target split that was stated for
// sea level. At the same CFM fewer pounds of air pass the coil, so each is cooled
// further; but the coil then runs colder and gives less, and wet-bulb readings
// stand for damper air, so the split grows by much less than the air thins: about
// 1.1 °F at 6,000 ft. The table's procedure is silent on it. The figure is
// computed with the coil of [RatedCoil] at 400 CFM per ton on a [CapacityLine],
// which a test repeats; coils that are hardly wet gain up to twice as much. The
// error is a *RangeError.
func SplitAltitude(
	target quantity.TemperatureDelta, atmosphere quantity.Pressure,
) (quantity.Uncertain[quantity.TemperatureDelta], error) {
	if err := checkAtmosphere(atmosphere.PlusMinus(0)); err != nil {
		return quantity.Uncertain[quantity.TemperatureDelta]{}, err
	}
	if err := limit.Within(
		"target split", target, 0, 40, "it is return less supply dry bulb",
	); err != nil {
		return quantity.Uncertain[quantity.TemperatureDelta]{}, err
	}
	thin := float64(target) * (1 - float64(atmosphere/quantity.StandardAtmosphere))
	return quantity.TemperatureDelta(splitPerThinness * thin).
			PlusMinus(quantity.TemperatureDelta(splitPerThinnessStd * thin)),
		nil
}
