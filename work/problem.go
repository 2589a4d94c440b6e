package work

import (
	"errors"
	"fmt"

	"github.com/satline/satline"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
)

// ErrOrder is what every error about the content of an order wraps.
var ErrOrder = errors.New("order")

// A Problem says what in an order stops it from being judged and what to do about it.
type Problem struct {
	// Field is the JSON path of the field at fault: "evacuations[0].decay[2].vacuum".
	Field string
	Kind  satline.ProblemKind
	// Problem says what is wrong, the valid range and what to mend.
	Problem string
	// Err is the cause, where another package found it: a *strictjson.Error where it stands in
	// a document.
	Err error
}

// Error implements error in one line.
func (p *Problem) Error() string {
	if at, ok := p.Err.(*strictjson.Error); ok {
		return "order: " + at.Error()
	}
	if p.Field == "" {
		return "order: " + p.Problem
	}
	return fmt.Sprintf("order: %s: %s", p.Field, p.Problem)
}

// Unwrap returns ErrOrder and the cause.
func (p *Problem) Unwrap() []error {
	if p.Err == nil {
		return []error{ErrOrder}
	}
	return []error{ErrOrder, p.Err}
}

// A checker collects what is wrong in an order.
type checker []*Problem

func (c *checker) add(kind satline.ProblemKind, field, problem string, args ...any) {
	*c = append(*c, &Problem{Field: field, Kind: kind, Problem: fmt.Sprintf(problem, args...)})
}

func (c *checker) because(kind satline.ProblemKind, field string, err error) {
	if err != nil {
		*c = append(*c, &Problem{Field: field, Kind: kind, Problem: err.Error(), Err: err})
	}
}

// within checks a value that is stated.
func within[T quantity.Quantity](c *checker, field string, v, low, top T, advice string) {
	if v != 0 && !(v >= low && v <= top) {
		c.because(satline.FieldOutOfRange, field, &quantity.RangeError{
			Quantity: "it", Value: v, Min: low, Max: top, Advice: advice,
		})
	}
}

// measured checks a reading with its uncertainty, which may be zero itself.
func measured[T quantity.Quantity](c *checker, field string, u *quantity.Uncertain[T], low, top T) {
	if u == nil {
		return
	}
	const advice = "check the figure and its unit"
	if !(u.Value >= low && u.Value <= top) || !(u.Std >= 0 && u.Std <= float64(top-low)) {
		c.because(satline.FieldOutOfRange, field, &quantity.RangeError{
			Quantity: "it", Value: u.Value, Min: low, Max: top, Advice: advice,
		})
	}
}
