package quantity

// Voltage is an electric potential difference in volts.
type Voltage float64

var voltageKind = kind{
	name: "voltage",
	units: []unit{
		{symbol: "V", scale: 1, also: []string{"volt", "volts"}},
		{symbol: "kV", scale: 1e3},
		{symbol: "V", scale: 1, also: []string{"volt", "volts"}},
	},
	si: 0, ip: 0, siDec: 1, ipDec: 1,
}

// Volts returns the voltage of v volts.
func Volts(v float64) Voltage { return Voltage(v) }

// Volts returns v in volts.
func (v Voltage) Volts() float64 { return float64(v) }

// PlusMinus pairs v with the standard uncertainty u.
func (v Voltage) PlusMinus(u Voltage) Uncertain[Voltage] {
	return Uncertain[Voltage]{v, abs(float64(u))}
}

// ParseVoltage reads a voltage with its unit. The error is a *ParseError.
func ParseVoltage(text string) (Voltage, error) {
	si, err := voltageKind.parse(text)
	return Voltage(si), err
}

// Format shows v in the unit that sys has for it, rounded for reading.
func (v Voltage) Format(sys System) string { return voltageKind.format(float64(v), sys) }

// String is Format(SI).
func (v Voltage) String() string { return v.Format(SI) }

// MarshalText writes v in V, exactly.
func (v Voltage) MarshalText() ([]byte, error) { return voltageKind.appendExact(nil, float64(v)) }

// UnmarshalText is ParseVoltage.
func (v *Voltage) UnmarshalText(text []byte) error {
	si, err := voltageKind.parse(string(text))
	if err != nil {
		return err
	}
	*v = Voltage(si)
	return nil
}

func (Voltage) kind() *kind { return &voltageKind }
