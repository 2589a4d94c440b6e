package quantity

// StaticPressure is the pressure of air in a duct against the room, in pascals. Return ducts are negative.
type StaticPressure float64

var staticPressureKind = kind{
	name: "static pressure",
	units: []unit{
		{symbol: "in. w.c.", scale: inchWater, also: []string{"in.w.c.", "inWC", "in wc", "in. wc", "in w.c.", "inwg", "in. w.g.", "inH2O", "in H2O", "iwc", "\"wc"}},
		{symbol: "Pa", scale: 1},
	},
	si: 1, ip: 0, siDec: 1, ipDec: 2,
}

// InchesWater returns the static pressure of v inches of water column (conventional).
func InchesWater(v float64) StaticPressure { return StaticPressure(v * inchWater) }

// InchesWater returns s in inches of water column (conventional).
func (s StaticPressure) InchesWater() float64 { return float64(s) / inchWater }

// PascalsStatic returns the static pressure of v pascals.
func PascalsStatic(v float64) StaticPressure { return StaticPressure(v) }

// PascalsStatic returns s in pascals.
func (s StaticPressure) PascalsStatic() float64 { return float64(s) }

// PlusMinus pairs s with the standard uncertainty u.
func (s StaticPressure) PlusMinus(u StaticPressure) Uncertain[StaticPressure] {
	return Uncertain[StaticPressure]{s, abs(float64(u))}
}

// ParseStaticPressure reads a static pressure with its unit. The error is a *ParseError.
func ParseStaticPressure(text string) (StaticPressure, error) {
	si, err := staticPressureKind.parse(text)
	return StaticPressure(si), err
}

// Format shows s in the unit that sys has for it, rounded for reading.
func (s StaticPressure) Format(sys System) string { return staticPressureKind.format(float64(s), sys) }

// String is Format(SI).
func (s StaticPressure) String() string { return s.Format(SI) }

// MarshalText writes s in in. w.c., exactly.
func (s StaticPressure) MarshalText() ([]byte, error) {
	return staticPressureKind.appendExact(nil, float64(s))
}

// UnmarshalText is ParseStaticPressure.
func (s *StaticPressure) UnmarshalText(text []byte) error {
	si, err := staticPressureKind.parse(string(text))
	if err != nil {
		return err
	}
	*s = StaticPressure(si)
	return nil
}

func (StaticPressure) kind() *kind { return &staticPressureKind }
