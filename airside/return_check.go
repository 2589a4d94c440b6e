package airside

import (
	"math"

	"github.com/satline/satline/quantity"
)

// ReturnReadings are what a return "dry bulb" is checked against.
type ReturnReadings struct {
	Return quantity.Uncertain[quantity.Temperature] `json:"return"`
	Supply quantity.Uncertain[quantity.Temperature] `json:"supply"`
	// Evaporating is the dew temperature at the suction pressure; nil where it
	// is not known.
	Evaporating *quantity.Uncertain[quantity.Temperature] `json:"evaporating,omitzero"`
}

// A ReturnCheck says whether a return reading taken for a dry bulb is the wet
// bulb.
type ReturnCheck struct {
	Readings ReturnReadings `json:"readings"`
	// Suspect says that the readings fit together better with the return as a
	// wet bulb: it is one until shown otherwise.
	Suspect bool                                          `json:"suspect"`
	Split   quantity.Uncertain[quantity.TemperatureDelta] `json:"split"`
	// Effectiveness is the split over the way from return to refrigerant, as the
	// readings stand; zero where the refrigerant is not known.
	Effectiveness    float64 `json:"effectiveness,omitzero"`
	EffectivenessStd float64 `json:"effectivenessStd,omitzero"`
	// DryBulbLow and DryBulbHigh bound the return dry bulb at which the supply
	// would be right for a wet bulb of the reading (Table RA3.2-3, ±3 °F); both
	// zero where there is none.
	DryBulbLow  quantity.Temperature `json:"dryBulbLow,omitzero"`
	DryBulbHigh quantity.Temperature `json:"dryBulbHigh,omitzero"`
}

const (
	// usualReturn is the coldest return air of a building that is being cooled,
	// and where Table RA3.2-3 begins. Common practice, no source.
	usualReturn = quantity.Temperature((70 + 459.67) / 1.8)
	// usualEffectiveness is the least share of the way from return air to
	// refrigerant that a sound coil cools the air. Common practice, no source;
	// the coil of RatedCoil cools it 0.53 to 0.63 of the way, and a test holds it
	// above this.
	usualEffectiveness = 0.5
)

// CheckReturn looks whether the return reading of a cooling machine is a wet
// bulb taken for a dry bulb. A return of 62 °F with a supply of 53 °F is the
// pattern (common practice, no source): the split is far too small for air so
// near a coil so cold, while a dry bulb of some 70 °F with a wet bulb of 62 °F
// would be sound. The error is a *RangeError.
func CheckReturn(r ReturnReadings) (ReturnCheck, error) {
	if err := airTemperature("return reading", r.Return); err != nil {
		return ReturnCheck{}, err
	}
	if err := airTemperature("supply dry bulb", r.Supply); err != nil {
		return ReturnCheck{}, err
	}
	c := ReturnCheck{
		Readings: r,
		Split: r.Return.Value.Sub(r.Supply.Value).
			PlusMinus(quantity.TemperatureDelta(math.Hypot(r.Return.Std, r.Supply.Std))),
	}
	poor := false
	if r.Evaporating != nil {
		if err := airTemperature("evaporating temperature", *r.Evaporating); err != nil {
			return ReturnCheck{}, err
		}
		if drive := float64(r.Return.Value - r.Evaporating.Value); drive > 0 {
			e := float64(c.Split.Value) / drive
			c.Effectiveness = e
			c.EffectivenessStd = math.Hypot(
				(1-e)*r.Return.Std, math.Hypot(r.Supply.Std, e*r.Evaporating.Std),
			) / drive
			poor = e < usualEffectiveness
		}
	}
	c.DryBulbLow, c.DryBulbHigh = dryBulbsFor(r.Return.Value, r.Supply.Value)
	// Without the refrigerant the split alone tells: below 70 °F the air is
	// drier than the table, so a sound split would be no smaller than this.
	const smallestSplit = quantity.TemperatureDelta(12 / 1.8)
	cold := r.Return.Value < usualReturn
	small := poor || r.Evaporating == nil && c.Split.Value < smallestSplit
	c.Suspect = cold && small && c.Split.Value > 0 && c.DryBulbHigh > 0
	return c, nil
}

// dryBulbsFor returns the return dry bulbs, within the table of target splits,
// at which a supply temperature is within tolerance of the target for a wet
// bulb; zeros where there is none. The split rises faster with the dry bulb than
// its target does, so they are one interval.
func dryBulbsFor(wetBulb, supply quantity.Temperature) (low, high quantity.Temperature) {
	const step = 0.1 // °F
	for f := float64(splitMinDryBulb); f <= splitMaxDryBulb; f += step {
		db := quantity.Fahrenheit(f)
		target, err := TargetSplit(db, wetBulb)
		if err != nil {
			continue
		}
		if d := db.Sub(supply) - target; d < -SplitTolerance || d > SplitTolerance {
			continue
		}
		if low == 0 {
			low = db
		}
		high = db
	}
	return low, high
}
