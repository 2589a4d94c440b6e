package quantity

// Conductance is the heat flow of a heat exchanger per degree between its two
// sides, UA, in watts per kelvin.
type Conductance float64

var conductanceKind = kind{
	name: "conductance",
	units: []unit{
		{symbol: "W/K", scale: 1},
		{symbol: "Btu/(h·°F)", scale: BTU / 3600 * 1.8, also: []string{"Btu/h/F", "Btu/(h F)"}},
		{symbol: "kW/K", scale: 1e3},
		{symbol: "W/K", scale: 1},
	},
	si: 0, ip: 1, siDec: 0, ipDec: 0,
}

// WattsPerKelvin returns the conductance of v watts per kelvin.
func WattsPerKelvin(v float64) Conductance { return Conductance(v) }

// WattsPerKelvin returns c in watts per kelvin.
func (c Conductance) WattsPerKelvin() float64 { return float64(c) }

// BtuPerHourFahrenheit returns the conductance of v British thermal units per
// hour and degree Fahrenheit.
func BtuPerHourFahrenheit(v float64) Conductance { return Conductance(v * (BTU / 3600 * 1.8)) }

// BtuPerHourFahrenheit returns c in British thermal units per hour and degree
// Fahrenheit.
func (c Conductance) BtuPerHourFahrenheit() float64 { return float64(c) / (BTU / 3600 * 1.8) }

// PlusMinus pairs c with the standard uncertainty u.
func (c Conductance) PlusMinus(u Conductance) Uncertain[Conductance] {
	return Uncertain[Conductance]{c, abs(float64(u))}
}

// ParseConductance reads a conductance with its unit. The error is a
// *ParseError.
func ParseConductance(text string) (Conductance, error) {
	si, err := conductanceKind.parse(text)
	return Conductance(si), err
}

// Format shows c in the unit that sys has for it, rounded for reading.
func (c Conductance) Format(sys System) string { return conductanceKind.format(float64(c), sys) }

// String is Format(SI).
func (c Conductance) String() string { return c.Format(SI) }

// MarshalText writes c in W/K, exactly.
func (c Conductance) MarshalText() ([]byte, error) {
	return conductanceKind.appendExact(nil, float64(c))
}

// UnmarshalText is ParseConductance.
func (c *Conductance) UnmarshalText(text []byte) error {
	si, err := conductanceKind.parse(string(text))
	if err != nil {
		return err
	}
	*c = Conductance(si)
	return nil
}

func (Conductance) kind() *kind { return &conductanceKind }
