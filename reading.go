package satline

import (
	"errors"

	"github.com/satline/satline/quantity"
)

// A Reading is what an instrument showed, with its standard uncertainty. The zero value is
// one that was not taken; Measured and ReadingOf make those that were. Its text is that of
// quantity.Uncertain; one not taken has none, and a field of it wants omitzero.
type Reading[T quantity.Quantity] struct {
	of    quantity.Uncertain[T]
	taken bool
}

// Measured makes a reading whose uncertainty is that of the instrument in
// Visit.Instruments.
func Measured[T quantity.Quantity](v T) Reading[T] {
	return ReadingOf(quantity.Uncertain[T]{Value: v})
}

// ReadingOf makes a reading that states its own uncertainty:
//
//	satline.ReadingOf(quantity.PSIG(118).PlusMinus(quantity.PSIG(0.5)))
func ReadingOf[T quantity.Quantity](u quantity.Uncertain[T]) Reading[T] {
	return Reading[T]{u, true}
}

// Taken reports whether the reading was taken.
func (r Reading[T]) Taken() bool { return r.taken }

// Get returns a copy of what was read; nil where the reading was not taken.
func (r Reading[T]) Get() *quantity.Uncertain[T] { return r.read() }

// read is Get without the copy.
func (r *Reading[T]) read() *quantity.Uncertain[T] {
	if !r.taken {
		return nil
	}
	return &r.of
}

// Equal reports whether both are the same reading, or both were not taken.
func (r Reading[T]) Equal(other Reading[T]) bool { return r == other }

// String is that of what was read; empty where the reading was not taken.
func (r Reading[T]) String() string {
	if !r.taken {
		return ""
	}
	return r.of.String()
}

// MarshalText writes what UnmarshalText reads; that a reading was not taken is an error.
func (r Reading[T]) MarshalText() ([]byte, error) {
	if !r.taken {
		return nil, errors.New("satline: a reading that was not taken has no text; leave it out")
	}
	return r.of.MarshalText()
}

// UnmarshalText takes a reading as quantity.Uncertain does, with the same errors.
func (r *Reading[T]) UnmarshalText(b []byte) error { return r.UnmarshalStyled(b, quantity.Style{}) }

// UnmarshalStyled is UnmarshalText of a text that is written as s has it.
func (r *Reading[T]) UnmarshalStyled(b []byte, s quantity.Style) error {
	err := r.of.UnmarshalStyled(b, s)
	r.taken = r.taken || err == nil
	return err
}
