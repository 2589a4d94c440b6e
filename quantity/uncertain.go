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
	kind() *kind
}

// Uncertain pairs a value with its standard uncertainty, one standard
// deviation in the sense of the GUM (JCGM 100:2008, 2.3.1). An instrument's
// "±1 °F" is usually a limit; see Rectangular.
//
// The text form is "62 °F ± 0.6 °F"; a value without "±" has no uncertainty
// stated, which reads back as zero.
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
func (u Uncertain[T]) Format(sys System) string {
	k := u.Value.kind()
	s := k.format(float64(u.Value), sys)
	if u.Std > 0 {
		s += " ± " + k.formatDifference(u.Std, float64(u.Value), sys)
	}
	return s
}

// String is Format(SI).
func (u Uncertain[T]) String() string { return u.Format(SI) }

// MarshalText writes the value, and the uncertainty where there is one, with
// digits enough to read both back bit for bit.
func (u Uncertain[T]) MarshalText() ([]byte, error) {
	k := u.Value.kind()
	b, err := k.appendExact(nil, float64(u.Value))
	if err != nil || u.Std == 0 {
		return b, err
	}
	diff := *k
	if k.difference != nil {
		diff.units = k.difference
	}
	diff.units = unshifted(diff.units)
	return diff.appendExact(append(b, " ± "...), u.Std)
}

// UnmarshalText reads "62 °F ± 0.6 °F", with "+/-" or "+-" for "±", or "62 °F"
// alone. The error is a *ParseError.
func (u *Uncertain[T]) UnmarshalText(text []byte) error {
	k := u.Value.kind()
	s := string(text)
	var head, tail string
	found := false
	for _, sign := range [...]string{"±", "+/-", "+-"} {
		if head, tail, found = strings.Cut(s, sign); found {
			break
		}
	}
	v, err := k.parse(head)
	if err != nil {
		return err
	}
	std := 0.0
	if found {
		if std, err = k.parseDifference(tail); err != nil {
			return err
		}
	}
	u.Value, u.Std = T(v), std
	return nil
}

// abs is what the PlusMinus methods make of an uncertainty.
func abs(v float64) float64 { return math.Abs(v) }

func unshifted(units []unit) []unit {
	out := make([]unit, len(units))
	for i, u := range units {
		u.shift = 0
		out[i] = u
	}
	return out
}
