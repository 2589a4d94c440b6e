package api

import (
	"math"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

// A StateQuestion asks for the state at an absolute pressure and exactly one of
// temperature, enthalpy, entropy and quality.
type StateQuestion struct {
	// Refrigerant by its ASHRAE 34 designation, in any usual spelling.
	Refrigerant string `json:"refrigerant"`
	// Pressure is absolute.
	Pressure    quantity.Pressure          `json:"pressure"`
	Temperature *quantity.Temperature      `json:"temperature,omitempty"`
	Enthalpy    *quantity.SpecificEnthalpy `json:"enthalpy,omitempty"`
	Entropy     *quantity.SpecificEntropy  `json:"entropy,omitempty"`
	// Quality is the share of vapor by mass, 0 to 1.
	Quality *float64 `json:"quality,omitempty"`
}

// A StateAnswer is everything at one state. Enthalpy and entropy count from the
// IIR datum, 200 kJ/kg and 1 kJ/(kg K) for saturated liquid at 0 °C.
type StateAnswer struct {
	// Refrigerant by its designation.
	Refrigerant string `json:"refrigerant"`
	// Phase is "liquid", "two-phase", "vapor" or "supercritical".
	Phase       refrigerant.Phase         `json:"phase"`
	Pressure    quantity.Pressure         `json:"pressure"`
	Temperature quantity.Temperature      `json:"temperature"`
	Density     quantity.Density          `json:"density"`
	Enthalpy    quantity.SpecificEnthalpy `json:"enthalpy"`
	Entropy     quantity.SpecificEntropy  `json:"entropy"`
	// Cp is the heat capacity at constant pressure; absent in two phases.
	Cp *quantity.SpecificHeat `json:"cp,omitempty"`
	// SpeedOfSound is absent in two phases.
	SpeedOfSound *quantity.Velocity `json:"speedOfSound,omitempty"`
	// Quality is the share of vapor by mass, 0 to 1.
	Quality float64 `json:"quality"`
}

// State answers a StateQuestion. The error is a *QuestionError or that of package
// refrigerant.
func State(q StateQuestion) (StateAnswer, error) {
	fluid, err := refrigerant.Lookup(q.Refrigerant)
	if err != nil {
		return StateAnswer{}, err
	}
	s, err := stateOf(fluid, q)
	if err != nil {
		return StateAnswer{}, err
	}
	out := StateAnswer{
		Refrigerant: fluid.Designation(), Phase: s.Phase,
		Pressure: s.Pressure, Temperature: s.Temperature, Density: s.Density, Enthalpy: s.Enthalpy,
		Entropy: s.Entropy, Quality: s.Quality,
	}
	if s.Phase != refrigerant.TwoPhase {
		out.Cp, out.SpeedOfSound = finite(s.Cp), finite(s.SpeedOfSound)
	}
	return out, nil
}

func stateOf(fluid *refrigerant.Refrigerant, q StateQuestion) (refrigerant.State, error) {
	switch {
	case !one(q.Temperature != nil, q.Enthalpy != nil, q.Entropy != nil, q.Quality != nil):
		return refrigerant.State{}, &QuestionError{"temperature",
			"give exactly one of temperature, enthalpy, entropy and quality"}
	case q.Temperature != nil:
		return fluid.State(q.Pressure, *q.Temperature)
	case q.Enthalpy != nil:
		return fluid.StateAtEnthalpy(q.Pressure, *q.Enthalpy)
	case q.Entropy != nil:
		return fluid.StateAtEntropy(q.Pressure, *q.Entropy)
	}
	return fluid.StateAtQuality(q.Pressure, *q.Quality)
}

// finite leaves out what is not defined, as the heat capacity at the critical
// point.
func finite[T ~float64](v T) *T {
	if math.IsInf(float64(v), 0) || math.IsNaN(float64(v)) {
		return nil
	}
	return &v
}
