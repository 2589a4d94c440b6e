package satline

import (
	"errors"
	"fmt"

	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
)

// A ProblemKind says in which way a field of a visit is wrong.
type ProblemKind string

// The kinds of problem.
const (
	// FieldMissing has to be given.
	FieldMissing ProblemKind = "missing"
	// FieldOutOfRange cannot be; the cause is a *quantity.RangeError with the range.
	FieldOutOfRange ProblemKind = "out of range"
	// FieldContradictory cannot be true beside another field, or an entry before it.
	FieldContradictory ProblemKind = "contradictory"
	// FieldUnknown is a word that is none of those there are; where the words are few, the cause
	// is a *quantity.NameError that has them.
	FieldUnknown ProblemKind = "unknown word"
	// DocumentMalformed is no JSON, or not that of a visit.
	DocumentMalformed ProblemKind = "malformed"
)

// ErrVisit is what every error about the content of a visit wraps.
var ErrVisit = errors.New("visit")

// A VisitError says what in a visit stops an assessment and what to do about
// it.
type VisitError struct {
	// Field is the JSON path of the field at fault: "readings.suctionPressure".
	Field string
	Kind  ProblemKind
	// Problem says what is wrong, the valid range and what to mend.
	Problem string
	// Err is the cause, where another package found it: a *strictjson.Error where it stands in
	// a document.
	Err error
}

// Error implements error in one line.
func (e *VisitError) Error() string {
	if at, ok := e.Err.(*strictjson.Error); ok {
		return "visit: " + at.Error()
	}
	if e.Field == "" {
		return "visit: " + e.Problem
	}
	return fmt.Sprintf("visit: %s: %s", e.Field, e.Problem)
}

// Unwrap returns ErrVisit and the cause.
func (e *VisitError) Unwrap() []error {
	if e.Err == nil {
		return []error{ErrVisit}
	}
	return []error{ErrVisit, e.Err}
}

// outOfRange is the error of a value of the visit that cannot be; it is also a
// *quantity.RangeError.
func outOfRange(field string, value, low, top fmt.Stringer, advice string) *VisitError {
	err := &quantity.RangeError{Quantity: field, Value: value, Min: low, Max: top, Advice: advice}
	return &VisitError{Field: field, Kind: FieldOutOfRange, Problem: err.Problem(), Err: err}
}

func missing(field, advice string) *VisitError {
	return &VisitError{Field: field, Kind: FieldMissing, Problem: "missing; " + advice}
}

// rangeProblem names the field that another package refused.
func rangeProblem(field string, err error) error {
	return &VisitError{Field: field, Kind: FieldOutOfRange, Problem: err.Error(), Err: err}
}

const adviceOnStd = "that is its uncertainty: give one standard deviation, or none"
