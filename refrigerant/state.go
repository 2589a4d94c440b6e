package refrigerant

import "github.com/satline/satline/quantity"

// A Phase is the kind of state a refrigerant is in.
type Phase string

// The phases.
const (
	// Liquid is below its bubble point, or at it.
	Liquid Phase = "liquid"
	// TwoPhase is liquid and vapor together.
	TwoPhase Phase = "two-phase"
	// Vapor is above its dew point, or at it, and any gas above the critical
	// temperature but below the critical pressure.
	Vapor Phase = "vapor"
	// Supercritical is above both critical temperature and pressure.
	Supercritical Phase = "supercritical"
)

// A State is everything the equation of state says of a refrigerant at one
// condition; between bubble and dew it may come from the tables made of it.
// Enthalpy and entropy count from the IIR datum: 200 kJ/kg and
// 1 kJ/(kg·K) for saturated liquid at 0 °C, at the bubble point for a blend.
type State struct {
	Phase       Phase                     `json:"phase"`
	Pressure    quantity.Pressure         `json:"pressure"`
	Temperature quantity.Temperature      `json:"temperature"`
	Density     quantity.Density          `json:"density"`
	Enthalpy    quantity.SpecificEnthalpy `json:"enthalpy"`
	Entropy     quantity.SpecificEntropy  `json:"entropy"`
	// Cp is the heat capacity at constant pressure, and SpeedOfSound that of
	// the single phase. Both are 0 in two phases, where they have no one value.
	Cp           quantity.SpecificHeat `json:"cp"`
	SpeedOfSound quantity.Velocity     `json:"speedOfSound"`
	// Quality is the share of the mass that is vapor: 0 for liquid, 1 for vapor
	// and for supercritical fluid.
	Quality float64 `json:"quality"`
}
