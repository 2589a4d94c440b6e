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
	// PerfectGasIAPWS is PerfectGas with the saturation pressure of IAPWS.
	PerfectGasIAPWS
	// RealGas is the virial model of ASHRAE RP-1485, which the tables of ASHRAE
	// Handbook Fundamentals are computed with: Herrmann, Kretzschmar and Gatley,
	// HVAC&R Research 15(5), 2009, pp. 961-986. A property takes microseconds
	// rather than nanoseconds.
	RealGas
)

var modelNames = [...]string{
	PerfectGas:      "perfect gas",
	PerfectGasIAPWS: "perfect gas, IAPWS saturation",
	RealGas:         "real gas",
}

// String returns "perfect gas" or the name of the other model.
func (m Model) String() string { return nameOf(modelNames[:], m, "unknown model") }

// MarshalText writes the name of String; what is none of the models is an error.
func (m Model) MarshalText() ([]byte, error) {
	return writeName("model of moist air", modelNames[:], m)
}

// UnmarshalText reads the names that String returns.
func (m *Model) UnmarshalText(text []byte) error {
	return readName("model of moist air", modelNames[:], text, m)
}

// Saturation returns the equation of saturation pressure that m uses.
func (m Model) saturation() Saturation {
	switch m {
	case RealGas:
		return IF97
	case PerfectGasIAPWS:
		return IAPWS
	}
	return HylandWexler
}

// What differs between the models. The perfect gas comes first and is inlined; the
// real gas is one call away.
// Temperatures are in kelvin, pressures in Pa, enthalpies in J per kg of dry air.

// boundary is where pure water condenses.
func (m Model) boundary() *boundary {
	if m == PerfectGas {
		return hylandWexlerBoundary()
	}
	return m.saturation().boundary()
}

// freezing is where a wick freezes: 0 °C, or in real air where ice and water
// with air dissolved in it give off the same vapor, 2 mK higher at 70 kPa.
func (m Model) freezing(p float64) float64 {
	if m == RealGas {
		return realFreezing(p)
	}
	return zeroCelsius
}

// saturationHumidityRatio is of air over plane water or ice at t. It is not
// ok where water boils at p.
func (m Model) saturationHumidityRatio(t, p float64) (ws float64, ok bool) {
	if m == RealGas {
		return realGas().saturationHumidityRatio(t, p)
	}
	pws := m.boundary().pressure.at(t)
	if pws >= p {
		return 0, false
	}
	return humidityRatioOf(pws, p), true
}

// humidityRatioAtRH is of air at t with relative humidity rh. It is not ok
// where that much vapor leaves no air.
func (m Model) humidityRatioAtRH(t, rh, p float64) (w float64, ok bool) {
	if m == RealGas {
		return realGas().humidityRatioAtRH(t, rh, p)
	}
	pw := rh * m.boundary().pressure.at(t)
	if pw >= p {
		return 0, false
	}
	return humidityRatioOf(pw, p), true
}

// vaporPressure is the mole fraction of the water times p.
func (m Model) vaporPressure(w, p float64) float64 {
	if m == RealGas {
		return p * moleFraction(w)
	}
	return vaporPressureOf(w, p)
}

// humidityRatio is the inverse of vaporPressure.
func (m Model) humidityRatio(pw, p float64) float64 {
	if m == RealGas {
		return humidityRatioOfFraction(pw / p)
	}
	return humidityRatioOf(pw, p)
}

// relativeHumidity is the vapor pressure over that of saturation at t.
func (m Model) relativeHumidity(t, w, p float64) float64 {
	if m == RealGas {
		return moleFraction(w) / realGas().fractionAtRH(t, 1, p)
	}
	return vaporPressureOf(w, p) / m.boundary().pressure.at(t)
}

// temperatureAtRH is where air of humidity ratio w has relative humidity rh.
func (m Model) temperatureAtRH(w, rh, p float64) float64 {
	if m == RealGas {
		return realGas().temperatureAtRH(w, rh, p)
	}
	return m.boundary().temperatureAt(vaporPressureOf(w, p) / rh)
}

// enthalpy is of air at t with humidity ratio w.
func (m Model) enthalpy(t, w, p float64) float64 {
	if m == RealGas {
		return realEnthalpy(t, w, p)
	}
	return enthalpyOf(t-zeroCelsius, w)
}

// temperatureAtEnthalpy is where air of humidity ratio w has enthalpy h.
func (m Model) temperatureAtEnthalpy(h, w, p float64) float64 {
	if m == RealGas {
		return realGas().temperatureAtEnthalpy(h, w, p)
	}
	return zeroCelsius + (h-w*evaporation0)/(cpDryAir+w*cpVapor)
}

// humidityRatioAtEnthalpy is of air at t with enthalpy h.
func (m Model) humidityRatioAtEnthalpy(t, h, p float64) float64 {
	if m == RealGas {
		return realGas().humidityRatioAtEnthalpy(t, h, p)
	}
	tc := t - zeroCelsius
	return (h - cpDryAir*tc) / (evaporation0 + cpVapor*tc)
}

// specificVolume is of air at t with humidity ratio w.
func (m Model) specificVolume(t, w, p float64) float64 {
	if m == RealGas {
		return realSpecificVolume(t, w, p)
	}
	return specificVolumeOf(t, w, p)
}

// waterEnthalpy is in J per kg of liquid water, or of ice, at t.
func (m Model) waterEnthalpy(t, p float64, ice bool) float64 {
	if m == RealGas {
		return realGas().waterEnthalpy(t, p, ice)
	}
	if ice {
		return enthalpyIceAt0 + cpIce*(t-zeroCelsius)
	}
	return cpWater * (t - zeroCelsius)
}

// wetBulbBalance is what the water evaporated at the wet bulb b, to saturate
// air of humidity ratio w, leaves of enthalpy to that air before: equations 33
// and 35 of ASHRAE Fundamentals, chapter 1, are it with perfect gases.
func (m Model) wetBulbBalance(b, w, ws, p float64) (h float64) {
	return m.enthalpy(b, ws, p) + (w-ws)*m.waterEnthalpy(b, p, b < m.freezing(p))
}

// humidityRatioAtWetBulb is of air at t with wet bulb b, where saturated air has
// humidity ratio ws.
func (m Model) humidityRatioAtWetBulb(t, b, ws, p float64, iced bool) float64 {
	if m == RealGas {
		return realHumidityRatioAtWetBulb(t, b, ws, p, iced)
	}
	return humidityRatioAtWetBulb(t-zeroCelsius, b-zeroCelsius, ws, iced)
}

// wetBulb is of air at t with humidity ratio w. Where the wick may be iced or
// wet, iced chooses.
func (m Model) wetBulb(t, w, p float64, iced bool) float64 {
	if m == RealGas {
		return realGas().wetBulb(t, w, p, iced)
	}
	return perfectGasWetBulb(m.boundary(), t, w, p, iced)
}

// driestWetWick is the humidity ratio of air at t whose wet wick is about to
// freeze; drier air has no wet bulb but an iced one. It is negative where even
// dry air leaves the wick wet.
func (m Model) driestWetWick(t, p float64) float64 {
	if m == RealGas {
		return realGas().driestWetWick(t, p)
	}
	return driestWetWick(m.boundary(), t-zeroCelsius, p)
}
