package quantity

import (
	"fmt"
	"math"
	"strings"
)

// Quantity is any of the types of this package.
type Quantity interface {
	~float64
	fmt.Stringer
	Format(System) string
	Styled(Style) string
	AppendStyled([]byte, Style) []byte
	kind() *kind
}

// Uncertain pairs a value with its standard uncertainty, one standard
// deviation in the sense of the GUM (JCGM 100:2008, 2.3.1). An instrument's
// "±1 °F" is usually a limit; see [Uncertain.Rectangular].
//
// The text form is "71 °F ± 0.6 °F", or "71 ± 0.6 °F" where one unit does for
// both; a value without "±" has no uncertainty stated, which reads back as zero.
type Uncertain[T Quantity] struct {
	Value T
	// Std is the standard uncertainty in the SI unit of T, for a Temperature
	// in kelvin. It is never negative: the PlusMinus methods take the size alone.
	Std float64
}

// Rectangular returns u with what stands beside the value taken for a limit: the
// "± 1 °F" of a data sheet, within which the error is as likely anywhere. The
// standard uncertainty of that is the limit over √3 (GUM 4.3.7).
func (u Uncertain[T]) Rectangular() Uncertain[T] {
	u.Std /= math.Sqrt(3)
	return u
}

// Interval returns the value less and plus k standard uncertainties.
func (u Uncertain[T]) Interval(k float64) (low, high T) {
	d := T(k * u.Std)
	return u.Value - d, u.Value + d
}

// Stated reports whether an uncertainty was given at all.
func (u Uncertain[T]) Stated() bool { return u.Std > 0 }

// Format shows value and standard uncertainty in one system of units.
func (u Uncertain[T]) Format(sys System) string { return u.Styled(Style{System: sys}) }

// Styled shows value and standard uncertainty as s has them, both in the unit of
// the value: to its decimals, or to two digits of the uncertainty where those are fewer and s
// states no unit (GUM 7.2.6).
func (u Uncertain[T]) Styled(s Style) string {
	var b [textBuffer]byte
	return string(u.AppendStyled(b[:0], s))
}

// AppendStyled appends to b what Styled returns.
func (u Uncertain[T]) AppendStyled(b []byte, s Style) []byte {
	k, v := u.Value.kind(), float64(u.Value)
	if !(u.Std > 0) {
		return k.appendStyled(b, v, s)
	}
	in := k.shown(v, s)
	of := &k.units[in.unit]
	shown, std := of.fromSI(v), u.Std/math.Abs(of.scale)
	if s.unit == "" && !math.IsInf(std, 0) {
		place := int(math.Floor(math.Log10(std))) - 1
		if math.Round(std/math.Pow10(place)) >= 100 {
			place++ // 9.97 rounds to 10, whose two digits end one place further left
		}
		in.decimals = min(in.decimals, max(0, -place))
		if place > 0 {
			coarse := math.Pow10(place)
			shown, std = math.Round(shown/coarse)*coarse, math.Round(std/coarse)*coarse
		}
	}
	b = s.appendNumber(b, shown, in.decimals)
	last := of.symbol
	if !s.OneUnit {
		b = append(append(b, ' '), of.symbol...)
		last = k.uncertaintyUnits()[in.unit].symbol
	}
	b = append(b, " ± "...)
	b = s.appendNumber(b, std, in.decimals)
	return append(append(b, ' '), last...)
}

// String is Format(SI).
func (u Uncertain[T]) String() string { return u.Format(SI) }

// MarshalText writes the value, and the uncertainty where there is one, with
// digits enough to read both back bit for bit.
func (u Uncertain[T]) MarshalText() ([]byte, error) {
	k := u.Value.kind()
	b, err := k.appendExact(make([]byte, 0, 48), float64(u.Value))
	if err != nil || u.Std == 0 {
		return b, err
	}
	if math.IsNaN(u.Std) || math.IsInf(u.Std, 0) || u.Std < 0 {
		return b, fmt.Errorf("quantity: uncertainty of the %s is negative or not a finite "+
			"number", k.name)
	}
	units := k.uncertaintyUnits()
	first := units[0]
	first.zero = 0
	return appendExactly(append(b, " ± "...), u.Std, &first, &units[k.base]), nil
}

// UnmarshalText reads "71 °F ± 0.6 °F", "71 ± 0.6 °F" or "71 °F" alone, with
// "+/-" or "+-" for "±". The error is a *ParseError.
func (u *Uncertain[T]) UnmarshalText(text []byte) error { return u.UnmarshalStyled(text, Style{}) }

// UnmarshalStyled is UnmarshalText of a text that is written as s has it.
func (u *Uncertain[T]) UnmarshalStyled(text []byte, s Style) error {
	k := u.Value.kind()
	head, tail, found := cutUncertainty(string(text))
	if found && bare(head, s) {
		// One unit for both: it is that of the value.
		_, of, problem := k.parseIn(tail, k.units, false, s)
		if problem != "" {
			return refusal("uncertain "+k.name, string(text), problem, k.units)
		}
		head += " " + of.symbol
	}
	v, err := k.parse(head, s)
	if err != nil {
		return err
	}
	std := 0.0
	if found {
		if std, err = k.parseUncertainty(tail, s); err != nil {
			return err
		}
	}
	u.Value, u.Std = T(v), std
	return nil
}

// UnmarshalUncertainty reads how far off a gauge pressure may be, as it stands behind "±": zero
// or more, as a difference of pressure, "0.6 psi" or "4 kPa", or as a gauge tells it, "0.6 psig".
// The error is a *ParseError, and g stays as it was.
func (g *GaugePressure) UnmarshalUncertainty(text []byte, s Style) error {
	std, err := gaugePressureKind.parseUncertainty(string(text), s)
	if err == nil {
		*g = GaugePressure(std)
	}
	return err
}

func cutUncertainty(text string) (value, uncertainty string, found bool) {
	for _, sign := range [...]string{"±", "+/-", "+-"} {
		if value, uncertainty, found = strings.Cut(text, sign); found {
			break
		}
	}
	return value, uncertainty, found
}

// bare says whether a text is a number without a unit.
func bare(text string, s Style) bool {
	text = strings.TrimSpace(text)
	return text != "" && numberLen(text, s.Comma) == len(text)
}

// abs is what the PlusMinus methods make of an uncertainty.
func abs(v float64) float64 { return math.Abs(v) }
