package quantity

// Density is a mass per volume in kilograms per cubic meter.
type Density float64

var densityKind = kind{
	name: "density",
	units: []unit{
		{symbol: "kg/m³", scale: 1, also: []string{"kg/m3"}},
		{symbol: "lb/ft³", scale: Pound / (Foot * Foot * Foot), also: []string{"lb/ft3", "lbm/ft3", "pcf"}},
		{symbol: "kg/L", scale: 1e3, also: []string{"kg/l"}},
		{symbol: "kg/m³", scale: 1, also: []string{"kg/m3"}},
	},
	si: 0, ip: 1, siDec: 3, ipDec: 4,
}

// PoundsPerCubicFoot returns the density of v pounds per cubic foot.
func PoundsPerCubicFoot(v float64) Density { return Density(v * (Pound / (Foot * Foot * Foot))) }

// PoundsPerCubicFoot returns d in pounds per cubic foot.
func (d Density) PoundsPerCubicFoot() float64 { return float64(d) / (Pound / (Foot * Foot * Foot)) }

// KilogramsPerCubicMeter returns the density of v kilograms per cubic meter.
func KilogramsPerCubicMeter(v float64) Density { return Density(v) }

// KilogramsPerCubicMeter returns d in kilograms per cubic meter.
func (d Density) KilogramsPerCubicMeter() float64 { return float64(d) }

// PlusMinus pairs d with the standard uncertainty u.
func (d Density) PlusMinus(u Density) Uncertain[Density] {
	return Uncertain[Density]{d, abs(float64(u))}
}

// ParseDensity reads a density with its unit. The error is a *ParseError.
func ParseDensity(text string) (Density, error) {
	si, err := densityKind.parse(text)
	return Density(si), err
}

// Format shows d in the unit that sys has for it, rounded for reading.
func (d Density) Format(sys System) string { return densityKind.format(float64(d), sys) }

// String is Format(SI).
func (d Density) String() string { return d.Format(SI) }

// MarshalText writes d in kg/m³, exactly.
func (d Density) MarshalText() ([]byte, error) { return densityKind.appendExact(nil, float64(d)) }

// UnmarshalText is ParseDensity.
func (d *Density) UnmarshalText(text []byte) error {
	si, err := densityKind.parse(string(text))
	if err != nil {
		return err
	}
	*d = Density(si)
	return nil
}

func (Density) kind() *kind { return &densityKind }
