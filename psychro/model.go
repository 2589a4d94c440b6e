package psychro

// A Model is a set of relations that moist air is computed with. The functions
// of the package use PerfectGas; the methods of a Model have the same names.
// An Air keeps the model it was made with.
type Model uint8

const (
	// PerfectGas treats dry air and water vapor as perfect gases, with the
	// saturation pressure of Hyland and Wexler (1983): ASHRAE Handbook
	// Fundamentals, chapter 1. At sea level it is within 0.7 % of the humidity
	// ratio of real air.
	PerfectGas Model = iota
)

var modelNames = [...]string{PerfectGas: "perfect gas"}

// String returns "perfect gas" or the name of the other model.
func (m Model) String() string {
	if int(m) < len(modelNames) {
		return modelNames[m]
	}
	return "unknown model"
}

// What differs between the models. Temperatures are in kelvin, pressures in Pa.

// boundary is where water condenses.
func (m Model) boundary() *boundary { return hylandWexlerBoundary }

// saturationHumidityRatio is of air over plane water or ice at t. It is not
// ok where water boils at p.
func (m Model) saturationHumidityRatio(t, p float64) (ws float64, ok bool) {
	pws := m.boundary().pressure.at(t)
	if pws >= p {
		return 0, false
	}
	return humidityRatioOf(pws, p), true
}

// humidityRatioAtRH is of air at t with relative humidity rh. It is not ok
// where that much vapor leaves no air.
func (m Model) humidityRatioAtRH(t, rh, p float64) (w float64, ok bool) {
	pw := rh * m.boundary().pressure.at(t)
	if pw >= p {
		return 0, false
	}
	return humidityRatioOf(pw, p), true
}

// temperatureAtRH is where air of humidity ratio w has relative humidity rh.
func (m Model) temperatureAtRH(w, rh, p float64) float64 {
	return m.boundary().temperatureAt(vaporPressureOf(w, p) / rh)
}

// enthalpy is in J per kg of dry air.
func (m Model) enthalpy(t, w, p float64) float64 { return enthalpyOf(t-zeroCelsius, w) }

// temperatureAtEnthalpy is where air of humidity ratio w has enthalpy h.
func (m Model) temperatureAtEnthalpy(h, w, p float64) float64 {
	return zeroCelsius + (h-w*evaporation0)/(cpDryAir+w*cpVapor)
}

// waterEnthalpy is in J per kg of liquid water, or of ice, at t.
func (m Model) waterEnthalpy(t, p float64, ice bool) float64 {
	if ice {
		return enthalpyIceAt0 + cpIce*(t-zeroCelsius)
	}
	return cpWater * (t - zeroCelsius)
}

// wetBulbBalance is what the water evaporated at the wet bulb b, to saturate
// air of humidity ratio w, leaves of enthalpy to that air before: equations 33
// and 35 of ASHRAE Fundamentals, chapter 1, are it with perfect gases.
func (m Model) wetBulbBalance(b, w, ws, p float64) (h float64) {
	return m.enthalpy(b, ws, p) + (w-ws)*m.waterEnthalpy(b, p, b < zeroCelsius)
}
