package coil

import "github.com/satline/satline/psychro"

// The perfect-gas enthalpy of moist air as package psychro has it: ASHRAE
// Handbook Fundamentals (2017), chapter 1, equations 30 and 33. A test holds
// these to psychro's.
const (
	zeroCelsius  = 273.15
	cpDryAir     = 1006.0 // J/(kg K)
	cpVapor      = 1860.0 // J/(kg K)
	evaporation0 = 2501e3 // J/kg, at 0 °C
	cpWater      = 4186.0 // J/(kg K)
)

// Air is air entering a coil, with what can be worked out once for all calls.
// The zero Air exchanges nothing.
type Air struct {
	t, w, p float64
	cp      float64 // J/K per kg of dry air
	dew     float64
}

// NewAir prepares entering air. Keep it while the air stays the same.
func NewAir(a psychro.Air) Air {
	if !a.IsValid() {
		return Air{}
	}
	w := a.HumidityRatio()
	return Air{
		t: float64(a.DryBulb()), w: w, p: float64(a.Pressure()),
		cp: cpDryAir + w*cpVapor, dew: float64(a.DewPoint()),
	}
}

// HeatCapacity returns the heat capacity of the air in J/K per kg of dry air.
func (a *Air) HeatCapacity() float64 { return a.cp }

// DewPoint returns the dew point in K: a coil is wet where its surface is colder.
func (a *Air) DewPoint() float64 { return a.dew }

// enthalpy is that of air with humidity ratio w at t kelvin, less what its water
// would carry away as condensate of enthalpy hw: heat taken from air by a wet
// coil is the flow times the change of this.
func enthalpy(t, w, hw float64) float64 {
	tc := t - zeroCelsius
	return cpDryAir*tc + w*(evaporation0+cpVapor*tc-hw)
}

// humidityRatioAt inverts enthalpy for w.
func humidityRatioAt(t, h, hw float64) float64 {
	tc := t - zeroCelsius
	return (h - cpDryAir*tc) / (evaporation0 + cpVapor*tc - hw)
}
