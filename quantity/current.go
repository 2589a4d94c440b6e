package quantity

// Current is an electric current in amperes.
type Current float64

var currentKind = kind{
	name: "current",
	units: []unit{
		{symbol: "A", scale: 1, also: []string{"amp", "amps", "ampere", "amperes"}},
	},
	si: 0, ip: 0, siDec: 1, ipDec: 1,
}

// Amperes returns the current of v amperes.
func Amperes(v float64) Current { return Current(v) }

// Amperes returns c in amperes.
func (c Current) Amperes() float64 { return float64(c) }

// PlusMinus pairs c with the standard uncertainty u.
func (c Current) PlusMinus(u Current) Uncertain[Current] {
	return Uncertain[Current]{c, abs(float64(u))}
}

// ParseCurrent reads a current with its unit. The error is a *ParseError.
func ParseCurrent(text string) (Current, error) {
	si, err := currentKind.parse(text)
	return Current(si), err
}

// Format shows c in the unit that sys has for it, rounded for reading.
func (c Current) Format(sys System) string { return currentKind.format(float64(c), sys) }

// String is Format(SI).
func (c Current) String() string { return c.Format(SI) }

// MarshalText writes c in A, exactly.
func (c Current) MarshalText() ([]byte, error) { return currentKind.appendExact(nil, float64(c)) }

// UnmarshalText is ParseCurrent.
func (c *Current) UnmarshalText(text []byte) error {
	si, err := currentKind.parse(string(text))
	if err != nil {
		return err
	}
	*c = Current(si)
	return nil
}

func (Current) kind() *kind { return &currentKind }
