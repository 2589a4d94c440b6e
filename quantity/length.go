package quantity

// Length is a length in meters; an elevation is one above sea level.
type Length float64

var lengthKind = kind{
	name: "length",
	units: []unit{
		{symbol: "m", scale: 1, also: []string{"meter", "meters", "metre", "metres"}},
		{symbol: "ft", scale: Foot, also: []string{"'", "foot", "feet"}},
		{symbol: "in", scale: Foot / 12, also: []string{"\"", "in.", "inch", "inches"}},
		{symbol: "mm", scale: 1e-3},
		{symbol: "cm", scale: 1e-2},
	},
	si: 0, ip: 1, siDec: 2, ipDec: 1,
	// Bores and diameters read in millimeters and inches.
	fineBelow: Foot, fineSI: 3, fineIP: 2, fineSIDec: 1, fineIPDec: 3,
	compound: true,
}

// Feet returns the length of v feet.
func Feet(v float64) Length { return Length(v * Foot) }

// Feet returns l in feet.
func (l Length) Feet() float64 { return float64(l) / Foot }

// Inches returns the length of v inches.
func Inches(v float64) Length { return Length(v * (Foot / 12)) }

// Inches returns l in inches.
func (l Length) Inches() float64 { return float64(l) / (Foot / 12) }

// Millimeters returns the length of v millimeters.
func Millimeters(v float64) Length { return Length(v * 1e-3) }

// Millimeters returns l in millimeters.
func (l Length) Millimeters() float64 { return float64(l) / 1e-3 }

// Meters returns the length of v meters.
func Meters(v float64) Length { return Length(v) }

// Meters returns l in meters.
func (l Length) Meters() float64 { return float64(l) }

// PlusMinus pairs l with the standard uncertainty u.
func (l Length) PlusMinus(u Length) Uncertain[Length] { return Uncertain[Length]{l, abs(float64(u))} }

// ParseLength reads a length with its unit. The error is a *ParseError.
func ParseLength(text string) (Length, error) {
	si, err := lengthKind.parse(text)
	return Length(si), err
}

// Format shows l in the unit that sys has for it, rounded for reading.
func (l Length) Format(sys System) string { return lengthKind.format(float64(l), sys) }

// String is Format(SI).
func (l Length) String() string { return l.Format(SI) }

// MarshalText writes l in m, exactly.
func (l Length) MarshalText() ([]byte, error) { return lengthKind.appendExact(nil, float64(l)) }

// UnmarshalText is ParseLength.
func (l *Length) UnmarshalText(text []byte) error {
	si, err := lengthKind.parse(string(text))
	if err != nil {
		return err
	}
	*l = Length(si)
	return nil
}

func (Length) kind() *kind { return &lengthKind }
