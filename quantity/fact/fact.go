// Package fact holds what is found and advised as values: a code with its quantities.
//
// A [Fact] says one thing: that a superheat is 9 °F above its target, that the machine is to
// be stopped, that a clamp is likely to be loose. A program reads its Code and Values; a
// person reads its Text, which is made last, in one language and one system of units.
// Rewording a sentence changes no code, and no program needs to read a sentence.
package fact

import (
	"fmt"
	"time"

	"github.com/satline/satline/quantity"
)

// A Code names what a fact says: "danger.floodback". It never changes its meaning.
type Code string

// A Fact is one statement. The zero Fact says nothing.
type Fact struct {
	Code Code `json:"code"`
	// Values by the names that the sentences of the code use; each at most once.
	Values []Value `json:"values,omitempty"`
	// Text is the fact as a sentence; empty until words were made of it.
	Text string `json:"text,omitzero"`
}

// New makes a fact of a code and its values.
func New(code Code, values ...Value) Fact { return Fact{Code: code, Values: values} }

// IsZero reports whether f says nothing.
func (f Fact) IsZero() bool { return f.Code == "" }

// With returns f with more values.
func (f Fact) With(values ...Value) Fact {
	f.Values = append(f.Values[:len(f.Values):len(f.Values)], values...)
	return f
}

// Value returns the value of that name; false where f has none.
func (f Fact) Value(name string) (Value, bool) {
	for _, v := range f.Values {
		if v.Name == name {
			return v, true
		}
	}
	return Value{}, false
}

// A Value is a named quantity of a fact. Of holds one of the types of package quantity, an
// Uncertain of one, a Share, an int, a time.Duration, a Term, Terms or a string.
type Value struct {
	Name string
	Of   any
}

// A Share is a part of one: a chance, or a part of a charge. It is written in per cent.
type Share float64

// A Times is how many times one value is of another: a compression ratio.
type Times float64

// A Number is a figure without a unit: a coefficient of performance.
type Number float64

// A Term is a code whose words stand inside a sentence: "cause.undercharge".
type Term Code

// Terms are several, listed in their order.
type Terms []Term

// Amount makes a value of a quantity.
func Amount[T quantity.Quantity](name string, v T) Value { return Value{name, v} }

// Of makes a value of what is no quantity.
func Of[T Share | Times | Number | int | time.Duration | Term | Terms | string](
	name string, v T,
) Value {
	return Value{name, v}
}

// Measured makes a value of a quantity with its standard uncertainty.
func Measured[T quantity.Quantity](name string, v quantity.Uncertain[T]) Value {
	return Value{name, v}
}

// String returns the code and the values, for logs.
func (f Fact) String() string {
	out := string(f.Code)
	for _, v := range f.Values {
		out += fmt.Sprintf(" %s=%v", v.Name, v.Of)
	}
	return out
}
