package quantity

// Mass is a mass in kilograms.
type Mass float64

var massKind = kind{
	name: "mass",
	units: []unit{
		{symbol: "kg", scale: 1},
		{symbol: "lb", scale: Pound, also: []string{"lbs", "lbm", "pound", "pounds"}},
		{symbol: "oz", scale: Pound / 16, also: []string{"ounce", "ounces"}},
		{symbol: "g", scale: 1e-3, also: []string{"gram", "grams"}},
		{symbol: "kg", scale: 1},
	},
	si: 0, ip: 1, siDec: 3, ipDec: 2,
	fineBelow: Pound, fineSI: 3, fineIP: 2, fineIPDec: 1,
	compound: true,
}

// Kilograms returns the mass of v kilograms.
func Kilograms(v float64) Mass { return Mass(v) }

// Kilograms returns m in kilograms.
func (m Mass) Kilograms() float64 { return float64(m) }

// Pounds returns the mass of v avoirdupois pounds.
func Pounds(v float64) Mass { return Mass(v * Pound) }

// Pounds returns m in avoirdupois pounds.
func (m Mass) Pounds() float64 { return float64(m) / Pound }

// Ounces returns the mass of v avoirdupois ounces.
func Ounces(v float64) Mass { return Mass(v * (Pound / 16)) }

// Ounces returns m in avoirdupois ounces.
func (m Mass) Ounces() float64 { return float64(m) / (Pound / 16) }

// Grams returns the mass of v grams.
func Grams(v float64) Mass { return Mass(v * 1e-3) }

// Grams returns m in grams.
func (m Mass) Grams() float64 { return float64(m) / 1e-3 }

// PlusMinus pairs m with the standard uncertainty u.
func (m Mass) PlusMinus(u Mass) Uncertain[Mass] { return Uncertain[Mass]{m, abs(float64(u))} }

// ParseMass reads a mass with its unit. The error is a *ParseError.
func ParseMass(text string) (Mass, error) {
	si, err := massKind.parse(text)
	return Mass(si), err
}

// Format shows m in the unit that sys has for it, rounded for reading.
func (m Mass) Format(sys System) string { return massKind.format(float64(m), sys) }

// String is Format(SI).
func (m Mass) String() string { return m.Format(SI) }

// MarshalText writes m in kg, exactly.
func (m Mass) MarshalText() ([]byte, error) { return massKind.appendExact(nil, float64(m)) }

// UnmarshalText is ParseMass.
func (m *Mass) UnmarshalText(text []byte) error {
	si, err := massKind.parse(string(text))
	if err != nil {
		return err
	}
	*m = Mass(si)
	return nil
}

func (Mass) kind() *kind { return &massKind }
