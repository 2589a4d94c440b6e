package psychro

// The perfect-gas relations of ASHRAE Handbook Fundamentals (2017), chapter 1.
// Temperatures with a c are in °C, the scale the enthalpies are counted on.
const (
	zeroCelsius = 273.15
	triplePoint = 273.16

	// molarMassRatio is 18.015268/28.966, water to dry air.
	molarMassRatio = 0.621945

	gasConstantDryAir = 287.042  // J/(kg K)
	inverseMassRatio  = 1.607858 // of equation 26

	cpDryAir       = 1006.0 // J/(kg K)
	cpVapor        = 1860.0 // J/(kg K)
	evaporation0   = 2501e3 // J/kg, of water at 0 °C
	cpWater        = 4186.0 // J/(kg K)
	sublimation0   = 2830e3 // J/kg, of ice at 0 °C, as equation 35 rounds it
	cpIce          = 2100.0 // J/(kg K)
	enthalpyIceAt0 = evaporation0 - sublimation0
)

// humidityRatioOf is equation 20.
func humidityRatioOf(pw, p float64) float64 { return molarMassRatio * pw / (p - pw) }

// vaporPressureOf is equation 36.
func vaporPressureOf(w, p float64) float64 { return p * w / (molarMassRatio + w) }

// enthalpyOf is equation 30.
func enthalpyOf(tc, w float64) float64 { return cpDryAir*tc + w*(evaporation0+cpVapor*tc) }

// specificVolumeOf is equation 26.
func specificVolumeOf(t, w, p float64) float64 {
	return gasConstantDryAir * t * (1 + inverseMassRatio*w) / p
}

// humidityRatioAtWetBulb is equations 33 (water) and 35 (ice): air at tc °C
// passes over enough water at the wet bulb bc to saturate it, and no heat comes
// from elsewhere. ws is the humidity ratio of saturation at the wet bulb.
func humidityRatioAtWetBulb(tc, bc, ws float64, iced bool) float64 {
	if iced {
		return ((sublimation0-(cpIce-cpVapor)*bc)*ws - cpDryAir*(tc-bc)) /
			(sublimation0 + cpVapor*tc - cpIce*bc)
	}
	return ((evaporation0-(cpWater-cpVapor)*bc)*ws - cpDryAir*(tc-bc)) /
		(evaporation0 + cpVapor*tc - cpWater*bc)
}
