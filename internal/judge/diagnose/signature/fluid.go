package signature

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A Fluid is what a refrigerant makes of a machine's readings, besides what its
// saturation temperatures take out already. Both are in kelvin.
type Fluid struct {
	// Superheat is its IsentropicSuperheat.
	Superheat float64
	// Glide is its dew less its bubble temperature in the evaporator: a coil is
	// as cold on average as the middle of it.
	Glide float64
}

// UsualFluid is R-410A.
var UsualFluid = Fluid{Superheat: 22.5}

// The reach of the refrigerants that the table was learnt from: R-407C has the
// least superheat and the most glide, R-32 the most superheat.
const (
	LeastLearnt = 19.0
	MostLearnt  = 35.0
	MostGlide   = 6.5
)

// FluidOf describes a refrigerant; its glide is that from 45 °F.
func FluidOf(r *refrigerant.Refrigerant) (Fluid, error) {
	superheat, err := IsentropicSuperheat(r)
	if err != nil {
		return Fluid{}, err
	}
	low, err := r.DewPressure(quantity.Fahrenheit(45))
	if err != nil {
		return Fluid{}, err
	}
	glide, err := r.Glide(low)
	return Fluid{superheat, float64(glide)}, err
}

// IsentropicSuperheat is the discharge temperature over condensing, in kelvin,
// of isentropic compression from 45 °F with 10 °F of superheat to 115 °F: what
// tells a refrigerant that compresses hot from one that does not
// (R-134a). The points are those of AHRI 540's usual rating (from memory).
func IsentropicSuperheat(r *refrigerant.Refrigerant) (float64, error) {
	evaporating, condensing := quantity.Fahrenheit(45), quantity.Fahrenheit(115)
	low, err := r.DewPressure(evaporating)
	if err != nil {
		return 0, err
	}
	suction, err := r.State(low, evaporating.Add(quantity.FahrenheitDelta(10)))
	if err != nil {
		return 0, err
	}
	bubble, err := r.BubblePressure(condensing)
	if err != nil {
		return 0, err
	}
	dew, err := r.DewPressure(condensing)
	if err != nil {
		return 0, err
	}
	discharge, err := r.StateAtEntropy((bubble+dew)/2, suction.Entropy)
	if err != nil {
		return 0, err
	}
	return float64(discharge.Temperature.Sub(condensing)), nil
}
