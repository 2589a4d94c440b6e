package quantity

// SpecificVolume is a volume per mass in cubic meters per kilogram. For moist air the mass is that of the dry air.
type SpecificVolume float64

var specificVolumeKind = kind{
	name: "specific volume",
	units: []unit{
		{symbol: "m³/kg", scale: 1, also: []string{"m3/kg"}},
		{symbol: "ft³/lb", scale: Foot * Foot * Foot / Pound, also: []string{"ft3/lb", "ft3/lbm"}},
		{symbol: "m³/kg", scale: 1, also: []string{"m3/kg"}},
	},
	si: 0, ip: 1, siDec: 4, ipDec: 3,
}

// CubicFeetPerPound returns the specific volume of v cubic feet per pound.
func CubicFeetPerPound(v float64) SpecificVolume {
	return SpecificVolume(v * (Foot * Foot * Foot / Pound))
}

// CubicFeetPerPound returns s in cubic feet per pound.
func (s SpecificVolume) CubicFeetPerPound() float64 { return float64(s) / (Foot * Foot * Foot / Pound) }

// CubicMetersPerKilogram returns the specific volume of v cubic meters per kilogram.
func CubicMetersPerKilogram(v float64) SpecificVolume { return SpecificVolume(v) }

// CubicMetersPerKilogram returns s in cubic meters per kilogram.
func (s SpecificVolume) CubicMetersPerKilogram() float64 { return float64(s) }

// PlusMinus pairs s with the standard uncertainty u.
func (s SpecificVolume) PlusMinus(u SpecificVolume) Uncertain[SpecificVolume] {
	return Uncertain[SpecificVolume]{s, abs(float64(u))}
}

// ParseSpecificVolume reads a specific volume with its unit. The error is a *ParseError.
func ParseSpecificVolume(text string) (SpecificVolume, error) {
	si, err := specificVolumeKind.parse(text)
	return SpecificVolume(si), err
}

// Format shows s in the unit that sys has for it, rounded for reading.
func (s SpecificVolume) Format(sys System) string { return specificVolumeKind.format(float64(s), sys) }

// String is Format(SI).
func (s SpecificVolume) String() string { return s.Format(SI) }

// MarshalText writes s in m³/kg, exactly.
func (s SpecificVolume) MarshalText() ([]byte, error) {
	return specificVolumeKind.appendExact(nil, float64(s))
}

// UnmarshalText is ParseSpecificVolume.
func (s *SpecificVolume) UnmarshalText(text []byte) error {
	si, err := specificVolumeKind.parse(string(text))
	if err != nil {
		return err
	}
	*s = SpecificVolume(si)
	return nil
}

func (SpecificVolume) kind() *kind { return &specificVolumeKind }
