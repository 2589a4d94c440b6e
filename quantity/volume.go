package quantity

// Volume is a volume in cubic meters.
type Volume float64

var volumeKind = kind{
	name: "volume",
	units: []unit{
		{symbol: "L", scale: 1e-3, also: []string{"liter", "liters", "litre", "litres"}},
		{symbol: "ft³", scale: Foot * Foot * Foot, also: []string{"ft3", "cu ft", "cf"}},
		{symbol: "in³", scale: Foot * Foot * Foot / 1728, also: []string{"in3", "cu in"}},
		{symbol: "gal", scale: 231 * Foot * Foot * Foot / 1728, also: []string{"gallon", "gallons"}},
		{symbol: "mL", scale: 1e-6, also: []string{"ml", "cm³", "cm3", "cc"}},
		{symbol: "m³", scale: 1, also: []string{"m3"}},
	},
	si: 0, ip: 1, siDec: 2, ipDec: 3,
}

// Liters returns the volume of v liters.
func Liters(v float64) Volume { return Volume(v * 1e-3) }

// Liters returns v in liters.
func (v Volume) Liters() float64 { return float64(v) / 1e-3 }

// CubicFeet returns the volume of v cubic feet.
func CubicFeet(v float64) Volume { return Volume(v * (Foot * Foot * Foot)) }

// CubicFeet returns v in cubic feet.
func (v Volume) CubicFeet() float64 { return float64(v) / (Foot * Foot * Foot) }

// CubicInches returns the volume of v cubic inches.
func CubicInches(v float64) Volume { return Volume(v * (Foot * Foot * Foot / 1728)) }

// CubicInches returns v in cubic inches.
func (v Volume) CubicInches() float64 { return float64(v) / (Foot * Foot * Foot / 1728) }

// CubicMeters returns the volume of v cubic meters.
func CubicMeters(v float64) Volume { return Volume(v) }

// CubicMeters returns v in cubic meters.
func (v Volume) CubicMeters() float64 { return float64(v) }

// PlusMinus pairs v with the standard uncertainty u.
func (v Volume) PlusMinus(u Volume) Uncertain[Volume] { return Uncertain[Volume]{v, abs(float64(u))} }

// ParseVolume reads a volume with its unit. The error is a *ParseError.
func ParseVolume(text string) (Volume, error) {
	si, err := volumeKind.parse(text)
	return Volume(si), err
}

// Format shows v in the unit that sys has for it, rounded for reading.
func (v Volume) Format(sys System) string { return volumeKind.format(float64(v), sys) }

// String is Format(SI).
func (v Volume) String() string { return v.Format(SI) }

// MarshalText writes v in L, exactly.
func (v Volume) MarshalText() ([]byte, error) { return volumeKind.appendExact(nil, float64(v)) }

// UnmarshalText is ParseVolume.
func (v *Volume) UnmarshalText(text []byte) error {
	si, err := volumeKind.parse(string(text))
	if err != nil {
		return err
	}
	*v = Volume(si)
	return nil
}

func (Volume) kind() *kind { return &volumeKind }
