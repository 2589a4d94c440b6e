package quantity

// Area is an area in square meters.
type Area float64

var areaKind = kind{
	name: "area",
	units: []unit{
		{symbol: "m²", scale: 1, also: []string{"m2"}},
		{symbol: "ft²", scale: Foot * Foot, also: []string{"ft2", "sq ft", "sqft"}},
		{symbol: "in²", scale: Foot * Foot / 144, also: []string{"in2", "sq in"}},
		{symbol: "cm²", scale: 1e-4, also: []string{"cm2"}},
		{symbol: "m²", scale: 1, also: []string{"m2"}},
	},
	si: 0, ip: 1, siDec: 3, ipDec: 2,
}

// SquareFeet returns the area of v square feet.
func SquareFeet(v float64) Area { return Area(v * (Foot * Foot)) }

// SquareFeet returns a in square feet.
func (a Area) SquareFeet() float64 { return float64(a) / (Foot * Foot) }

// SquareInches returns the area of v square inches.
func SquareInches(v float64) Area { return Area(v * (Foot * Foot / 144)) }

// SquareInches returns a in square inches.
func (a Area) SquareInches() float64 { return float64(a) / (Foot * Foot / 144) }

// SquareMeters returns the area of v square meters.
func SquareMeters(v float64) Area { return Area(v) }

// SquareMeters returns a in square meters.
func (a Area) SquareMeters() float64 { return float64(a) }

// PlusMinus pairs a with the standard uncertainty u.
func (a Area) PlusMinus(u Area) Uncertain[Area] { return Uncertain[Area]{a, abs(float64(u))} }

// ParseArea reads an area with its unit. The error is a *ParseError.
func ParseArea(text string) (Area, error) {
	si, err := areaKind.parse(text)
	return Area(si), err
}

// Format shows a in the unit that sys has for it, rounded for reading.
func (a Area) Format(sys System) string { return areaKind.format(float64(a), sys) }

// String is Format(SI).
func (a Area) String() string { return a.Format(SI) }

// MarshalText writes a in m², exactly.
func (a Area) MarshalText() ([]byte, error) { return areaKind.appendExact(nil, float64(a)) }

// UnmarshalText is ParseArea.
func (a *Area) UnmarshalText(text []byte) error {
	si, err := areaKind.parse(string(text))
	if err != nil {
		return err
	}
	*a = Area(si)
	return nil
}

func (Area) kind() *kind { return &areaKind }
