package charge

import (
	"math"

	"github.com/satline/satline/internal/base/finite"
	"github.com/satline/satline/internal/base/normal"
	"github.com/satline/satline/quantity"
)

// A Better says which reading to take better so that a verdict of CannotTell
// becomes one.
type Better struct {
	// Reading is the one that contributes most to the doubt.
	Reading string `json:"reading"`
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
}

// Better returns which reading to take better; false where the verdict is not
// CannotTell or no reading states its uncertainty as a number.
func (v Verdict) Better() (Better, bool) {
	if v.Outcome != CannotTell || v.Target.Tolerance <= 0 {
		return Better{}, false
	}
	whole := v.Measured.Budget
	whole.Join(v.Target.Budget)
	largest, ok := whole.Largest()
	if !ok {
		return Better{}, false
	}
	b := Better{Reading: largest.Reading, Now: largest.Contribution}
	b.All = quantity.TemperatureDelta(
		decidingStd(float64(v.Deviation.Value), float64(v.Target.Tolerance), decisionLevel.value),
	)
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
