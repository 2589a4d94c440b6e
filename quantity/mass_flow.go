package quantity

// MassFlow is a mass flow in kilograms per second.
type MassFlow float64

var massFlowKind = kind{
	name: "mass flow",
	units: []unit{
		{symbol: "g/s", scale: 1e-3},
		{symbol: "lb/h", scale: Pound / 3600, also: []string{"lb/hr", "lbm/h", "pph"}},
		{symbol: "lb/min", scale: Pound / 60, also: []string{"lbm/min"}},
		{symbol: "kg/h", scale: 1.0 / 3600, also: []string{"kg/hr"}},
		{symbol: "kg/s", scale: 1},
	},
	si: 0, ip: 1, siDec: 2, ipDec: 0,
}

// GramsPerSecond returns the mass flow of v grams per second.
func GramsPerSecond(v float64) MassFlow { return MassFlow(v * 1e-3) }

// GramsPerSecond returns m in grams per second.
func (m MassFlow) GramsPerSecond() float64 { return float64(m) / 1e-3 }

// PoundsPerHour returns the mass flow of v pounds per hour.
func PoundsPerHour(v float64) MassFlow { return MassFlow(v * (Pound / 3600)) }

// PoundsPerHour returns m in pounds per hour.
func (m MassFlow) PoundsPerHour() float64 { return float64(m) / (Pound / 3600) }

// KilogramsPerSecond returns the mass flow of v kilograms per second.
func KilogramsPerSecond(v float64) MassFlow { return MassFlow(v) }

// KilogramsPerSecond returns m in kilograms per second.
func (m MassFlow) KilogramsPerSecond() float64 { return float64(m) }

// PlusMinus pairs m with the standard uncertainty u.
func (m MassFlow) PlusMinus(u MassFlow) Uncertain[MassFlow] {
	return Uncertain[MassFlow]{m, abs(float64(u))}
}

// ParseMassFlow reads a mass flow with its unit. The error is a *ParseError.
func ParseMassFlow(text string) (MassFlow, error) {
	si, err := massFlowKind.parse(text)
	return MassFlow(si), err
}

// Format shows m in the unit that sys has for it, rounded for reading.
func (m MassFlow) Format(sys System) string { return massFlowKind.format(float64(m), sys) }

// String is Format(SI).
func (m MassFlow) String() string { return m.Format(SI) }

// MarshalText writes m in g/s, exactly.
func (m MassFlow) MarshalText() ([]byte, error) { return massFlowKind.appendExact(nil, float64(m)) }

// UnmarshalText is ParseMassFlow.
func (m *MassFlow) UnmarshalText(text []byte) error {
	si, err := massFlowKind.parse(string(text))
	if err != nil {
		return err
	}
	*m = MassFlow(si)
	return nil
}

func (MassFlow) kind() *kind { return &massFlowKind }
