package quantity

// Temperature is a thermodynamic temperature in kelvin. Nothing is below 0 K.
type Temperature float64

var temperatureKind = kind{
	name: "temperature",
	units: []unit{
		{symbol: "°C", scale: 1, shift: 273.15, also: []string{"C", "degC", "deg C", "℃"}},
		{symbol: "°F", scale: 5.0 / 9, shift: 459.67, also: []string{"F", "degF", "deg F", "℉"}},
		{symbol: "K", scale: 1, also: []string{"kelvin"}},
	},
	si: 0, ip: 1, siDec: 1, ipDec: 1,
}

// Celsius returns the temperature of v degrees Celsius.
func Celsius(v float64) Temperature { return Temperature(v + 273.15) }

// Celsius returns t in degrees Celsius.
func (t Temperature) Celsius() float64 { return float64(t) - 273.15 }

// Fahrenheit returns the temperature of v degrees Fahrenheit.
func Fahrenheit(v float64) Temperature { return Temperature((v + 459.67) * (5.0 / 9)) }

// Fahrenheit returns t in degrees Fahrenheit.
func (t Temperature) Fahrenheit() float64 { return float64(t)/(5.0/9) - 459.67 }

// Kelvin returns the temperature of v kelvin.
func Kelvin(v float64) Temperature { return Temperature(v) }

// Kelvin returns t in kelvin.
func (t Temperature) Kelvin() float64 { return float64(t) }

// Sub returns the difference t − u.
func (t Temperature) Sub(u Temperature) TemperatureDelta { return TemperatureDelta(t - u) }

// Add returns the temperature d above t.
func (t Temperature) Add(d TemperatureDelta) Temperature { return t + Temperature(d) }

// PlusMinus pairs t with the standard uncertainty u.
func (t Temperature) PlusMinus(u TemperatureDelta) Uncertain[Temperature] {
	return Uncertain[Temperature]{t, abs(float64(u))}
}

// ParseTemperature reads a temperature with its unit. The error is a *ParseError.
func ParseTemperature(text string) (Temperature, error) {
	si, err := temperatureKind.parse(text)
	return Temperature(si), err
}

// Format shows t in the unit that sys has for it, rounded for reading.
func (t Temperature) Format(sys System) string { return temperatureKind.format(float64(t), sys) }

// String is Format(SI).
func (t Temperature) String() string { return t.Format(SI) }

// MarshalText writes t in °C, exactly.
func (t Temperature) MarshalText() ([]byte, error) {
	return temperatureKind.appendExact(nil, float64(t))
}

// UnmarshalText is ParseTemperature.
func (t *Temperature) UnmarshalText(text []byte) error {
	si, err := temperatureKind.parse(string(text))
	if err != nil {
		return err
	}
	*t = Temperature(si)
	return nil
}

func (Temperature) kind() *kind { return &temperatureKind }
