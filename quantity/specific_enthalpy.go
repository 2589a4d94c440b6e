package quantity

// SpecificEnthalpy is an enthalpy per mass in joules per kilogram, from the datum that the package returning it names.
type SpecificEnthalpy float64

var specificEnthalpyKind = kind{
	name: "specific enthalpy",
	units: []unit{
		{symbol: "kJ/kg", scale: 1e3},
		{symbol: "Btu/lb", scale: 2326, also: []string{"Btu/lbm"}},
		{symbol: "J/kg", scale: 1},
	},
	si: 0, ip: 1, siDec: 2, ipDec: 2,
}

// KilojoulesPerKilogram returns the specific enthalpy of v kilojoules per kilogram.
func KilojoulesPerKilogram(v float64) SpecificEnthalpy { return SpecificEnthalpy(v * 1e3) }

// KilojoulesPerKilogram returns s in kilojoules per kilogram.
func (s SpecificEnthalpy) KilojoulesPerKilogram() float64 { return float64(s) / 1e3 }

// BtuPerPound returns the specific enthalpy of v British thermal units per pound.
func BtuPerPound(v float64) SpecificEnthalpy { return SpecificEnthalpy(v * 2326) }

// BtuPerPound returns s in British thermal units per pound.
func (s SpecificEnthalpy) BtuPerPound() float64 { return float64(s) / 2326 }

// JoulesPerKilogram returns the specific enthalpy of v joules per kilogram.
func JoulesPerKilogram(v float64) SpecificEnthalpy { return SpecificEnthalpy(v) }

// JoulesPerKilogram returns s in joules per kilogram.
func (s SpecificEnthalpy) JoulesPerKilogram() float64 { return float64(s) }

// PlusMinus pairs s with the standard uncertainty u.
func (s SpecificEnthalpy) PlusMinus(u SpecificEnthalpy) Uncertain[SpecificEnthalpy] {
	return Uncertain[SpecificEnthalpy]{s, abs(float64(u))}
}

// ParseSpecificEnthalpy reads a specific enthalpy with its unit. The error is a *ParseError.
func ParseSpecificEnthalpy(text string) (SpecificEnthalpy, error) {
	si, err := specificEnthalpyKind.parse(text)
	return SpecificEnthalpy(si), err
}

// Format shows s in the unit that sys has for it, rounded for reading.
func (s SpecificEnthalpy) Format(sys System) string {
	return specificEnthalpyKind.format(float64(s), sys)
}

// String is Format(SI).
func (s SpecificEnthalpy) String() string { return s.Format(SI) }

// MarshalText writes s in kJ/kg, exactly.
func (s SpecificEnthalpy) MarshalText() ([]byte, error) {
	return specificEnthalpyKind.appendExact(nil, float64(s))
}

// UnmarshalText is ParseSpecificEnthalpy.
func (s *SpecificEnthalpy) UnmarshalText(text []byte) error {
	si, err := specificEnthalpyKind.parse(string(text))
	if err != nil {
		return err
	}
	*s = SpecificEnthalpy(si)
	return nil
}

func (SpecificEnthalpy) kind() *kind { return &specificEnthalpyKind }
