package charge

import (
	"fmt"
	"math"

	"github.com/satline/satline/internal/finite"
	"github.com/satline/satline/internal/normal"
	"github.com/satline/satline/quantity"
)

// A Better says which reading to take better so that a verdict of CannotTell
// becomes one.
type Better struct {
	// Reading is the one that contributes most to the doubt.
	Reading Reading `json:"reading"`
	// Now and Need are its standard uncertainty as it is and as it would have
	// to be, both as they tell on the deviation. Need is zero where bettering
	// this one reading is not enough.
	Now  quantity.TemperatureDelta `json:"now"`
	Need quantity.TemperatureDelta `json:"need"`
	// All is what the standard uncertainty of the whole deviation would have
	// to be, with all readings together.
	All quantity.TemperatureDelta `json:"all"`
	// AtEdge says that the value lies so close to the edge of the band that no
	// field instrument would settle it.
	AtEdge bool `json:"atEdge"`

	sensitivity float64
}

// Better returns which reading to take better; false where the verdict is not
// CannotTell or no reading states its uncertainty as a number.
func (v Verdict) Better() (Better, bool) {
	if v.Outcome != CannotTell || v.Target.Tolerance <= 0 {
		return Better{}, false
	}
	whole := v.Measured.Budget
	whole.join(v.Target.Budget)
	largest, ok := whole.Largest()
	if !ok {
		return Better{}, false
	}
	b := Better{Reading: largest.Reading, Now: largest.Contribution(), sensitivity: math.Abs(largest.Sensitivity)}
	b.All = quantity.TemperatureDelta(decidingStd(float64(v.Deviation.Value), float64(v.Target.Tolerance), decisionLevel.value))
	b.AtEdge = b.All < finestField.value
	own := float64(b.Now)
	others := v.Deviation.Std*v.Deviation.Std - own*own
	if room := float64(b.All)*float64(b.All) - others; room > 0 {
		b.Need = quantity.TemperatureDelta(math.Sqrt(room))
	}
	if !finite.Is(b.Now) || !finite.Is(b.Need) || !finite.Is(b.All) {
		return Better{}, false
	}
	return b, true
}

// decidingStd returns the standard uncertainty at which a deviation d would be
// decided at the level: at which the probability of the side that d lies on
// just reaches it.
func decidingStd(d, tolerance, level float64) float64 {
	decided := func(std float64) bool {
		below, within, above := normal.Chances(d, std, tolerance)
		return max(below, within, above) >= level
	}
	low, high := 0.0, 10*(math.Abs(d)+tolerance)
	for range 60 {
		if mid := (low + high) / 2; decided(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// Text says what to do, in a system of units.
func (b Better) Text(sys quantity.System) string {
	if b.AtEdge {
		return "the value lies at the edge of the band, and no field instrument settles which side: read again when conditions differ, and move no charge on it"
	}
	switch b.Reading {
	case GeneralFigure:
		return "read the target from the unit's label: most of the doubt is whether the general figure fits this machine"
	case SaturationCurve:
		return "take the saturation temperature from the maker's chart: most of the doubt is that of an estimate of it"
	case Unsteadiness:
		return "let the system settle and log it longer: most of the doubt is its unsteadiness"
	case Atmosphere:
		return "give the elevation of the site, or read a barometer there: most of the doubt is the pressure that the gauge counts from"
	}
	now, need := b.inItsUnit(b.Now, sys), b.inItsUnit(b.Need, sys)
	s := fmt.Sprintf("take the %s better: it is good to ±%s (one standard uncertainty)", b.Reading.Name(), now)
	switch {
	case b.Need > 0 && need == now:
		return s + ", and a little better than that would settle it"
	case b.Need > 0:
		return s + fmt.Sprintf(", and ±%s would settle it", need)
	}
	return s + fmt.Sprintf(", and more than this one reading must be bettered: all together must come to ±%s", b.All.Format(sys))
}

// inItsUnit shows an uncertainty of the deviation as that of the reading.
func (b Better) inItsUnit(d quantity.TemperatureDelta, sys quantity.System) string {
	own := float64(d)
	if b.sensitivity > 0 {
		own /= b.sensitivity
	}
	switch b.Reading {
	case SuctionPressure, LiquidPressure, Atmosphere:
		return pressureText(own, sys)
	}
	return quantity.TemperatureDelta(own).Format(sys)
}
