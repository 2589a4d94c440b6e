package signature

import (
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// UsualIsentropicSuperheat is that of R-410A.
const UsualIsentropicSuperheat = 22.5

// The isentropic superheats of the refrigerants that the table was learnt from,
// in kelvin: R-407C has the least and R-32 the most.
const (
	LeastLearnt = 19.0
	MostLearnt  = 35.0
)

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
