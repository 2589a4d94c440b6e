package quantity

// TemperatureDelta is a difference of two temperatures in kelvin: a superheat, a split, an error.
type TemperatureDelta float64

var temperatureDeltaKind = kind{
	name: "temperature difference",
	units: []unit{
		{symbol: "K", scale: 1, also: []string{"kelvin"}},
		{symbol: "°F", scale: 5.0 / 9, also: []string{"F", "degF", "Δ°F", "F°", "R"}},
		{symbol: "°C", scale: 1, also: []string{"C", "degC", "Δ°C", "C°"}},
	},
	si: 0, ip: 1, siDec: 1, ipDec: 1,
}

// CelsiusDelta returns the temperature difference of v degrees Celsius.
func CelsiusDelta(v float64) TemperatureDelta { return TemperatureDelta(v) }

// CelsiusDelta returns t in degrees Celsius.
func (t TemperatureDelta) CelsiusDelta() float64 { return float64(t) }

// FahrenheitDelta returns the temperature difference of v degrees Fahrenheit.
func FahrenheitDelta(v float64) TemperatureDelta { return TemperatureDelta(v * (5.0 / 9)) }

// FahrenheitDelta returns t in degrees Fahrenheit.
func (t TemperatureDelta) FahrenheitDelta() float64 { return float64(t) / (5.0 / 9) }

// KelvinDelta returns the temperature difference of v kelvin.
func KelvinDelta(v float64) TemperatureDelta { return TemperatureDelta(v) }

// KelvinDelta returns t in kelvin.
func (t TemperatureDelta) KelvinDelta() float64 { return float64(t) }

// PlusMinus pairs t with the standard uncertainty u.
func (t TemperatureDelta) PlusMinus(u TemperatureDelta) Uncertain[TemperatureDelta] {
	return Uncertain[TemperatureDelta]{t, abs(float64(u))}
}

// ParseTemperatureDelta reads a temperature difference with its unit. The error is a *ParseError.
func ParseTemperatureDelta(text string) (TemperatureDelta, error) {
	si, err := temperatureDeltaKind.parse(text)
	return TemperatureDelta(si), err
}

// Format shows t in the unit that sys has for it, rounded for reading.
func (t TemperatureDelta) Format(sys System) string {
	return temperatureDeltaKind.format(float64(t), sys)
}

// String is Format(SI).
func (t TemperatureDelta) String() string { return t.Format(SI) }

// MarshalText writes t in K, exactly.
func (t TemperatureDelta) MarshalText() ([]byte, error) {
	return temperatureDeltaKind.appendExact(nil, float64(t))
}

// UnmarshalText is ParseTemperatureDelta.
func (t *TemperatureDelta) UnmarshalText(text []byte) error {
	si, err := temperatureDeltaKind.parse(string(text))
	if err != nil {
		return err
	}
	*t = TemperatureDelta(si)
	return nil
}

func (TemperatureDelta) kind() *kind { return &temperatureDeltaKind }

// Kelvin is KelvinDelta: on a difference the name of the unit is enough.
func (t TemperatureDelta) Kelvin() float64 { return t.KelvinDelta() }

// Celsius is CelsiusDelta.
func (t TemperatureDelta) Celsius() float64 { return t.CelsiusDelta() }

// Fahrenheit is FahrenheitDelta.
func (t TemperatureDelta) Fahrenheit() float64 { return t.FahrenheitDelta() }
