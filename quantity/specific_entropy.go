package quantity

// SpecificEntropy is an entropy per mass in joules per kilogram and kelvin. Specific heat has the same unit.
type SpecificEntropy float64

var specificEntropyKind = kind{
	name: "specific entropy",
	units: []unit{
		{symbol: "kJ/(kg·K)", scale: 1e3, also: []string{"kJ/(kg K)", "kJ/kg-K", "kJ/kgK"}},
		{symbol: "Btu/(lb·°R)", scale: 4186.8, also: []string{"Btu/(lb R)", "Btu/lb-R", "Btu/(lb·R)", "Btu/(lb °F)", "Btu/lb-F"}},
		{symbol: "J/(kg·K)", scale: 1, also: []string{"J/(kg K)", "J/kg-K", "J/kgK"}},
	},
	si: 0, ip: 1, siDec: 4, ipDec: 4,
}

// KilojoulesPerKilogramKelvin returns the specific entropy of v kilojoules per kilogram and kelvin.
func KilojoulesPerKilogramKelvin(v float64) SpecificEntropy { return SpecificEntropy(v * 1e3) }

// KilojoulesPerKilogramKelvin returns s in kilojoules per kilogram and kelvin.
func (s SpecificEntropy) KilojoulesPerKilogramKelvin() float64 { return float64(s) / 1e3 }

// BtuPerPoundRankine returns the specific entropy of v British thermal units per pound and degree Rankine.
func BtuPerPoundRankine(v float64) SpecificEntropy { return SpecificEntropy(v * 4186.8) }

// BtuPerPoundRankine returns s in British thermal units per pound and degree Rankine.
func (s SpecificEntropy) BtuPerPoundRankine() float64 { return float64(s) / 4186.8 }

// JoulesPerKilogramKelvin returns the specific entropy of v joules per kilogram and kelvin.
func JoulesPerKilogramKelvin(v float64) SpecificEntropy { return SpecificEntropy(v) }

// JoulesPerKilogramKelvin returns s in joules per kilogram and kelvin.
func (s SpecificEntropy) JoulesPerKilogramKelvin() float64 { return float64(s) }

// SpecificHeat is a heat capacity per mass, which has the unit of an entropy.
type SpecificHeat = SpecificEntropy

// PlusMinus pairs s with the standard uncertainty u.
func (s SpecificEntropy) PlusMinus(u SpecificEntropy) Uncertain[SpecificEntropy] {
	return Uncertain[SpecificEntropy]{s, abs(float64(u))}
}

// ParseSpecificEntropy reads a specific entropy with its unit. The error is a *ParseError.
func ParseSpecificEntropy(text string) (SpecificEntropy, error) {
	si, err := specificEntropyKind.parse(text)
	return SpecificEntropy(si), err
}

// Format shows s in the unit that sys has for it, rounded for reading.
func (s SpecificEntropy) Format(sys System) string {
	return specificEntropyKind.format(float64(s), sys)
}

// String is Format(SI).
func (s SpecificEntropy) String() string { return s.Format(SI) }

// MarshalText writes s in kJ/(kg·K), exactly.
func (s SpecificEntropy) MarshalText() ([]byte, error) {
	return specificEntropyKind.appendExact(nil, float64(s))
}

// UnmarshalText is ParseSpecificEntropy.
func (s *SpecificEntropy) UnmarshalText(text []byte) error {
	si, err := specificEntropyKind.parse(string(text))
	if err != nil {
		return err
	}
	*s = SpecificEntropy(si)
	return nil
}

func (SpecificEntropy) kind() *kind { return &specificEntropyKind }
