package api

import (
	"net/http"

	"github.com/satline/satline/quantity/fact"
)

// A Problem is an error as RFC 9457 has it.
type Problem struct {
	// Type names the kind of problem; programs go by it, and a GET of it says
	// what it is.
	Type string `json:"type"`
	// Title says what kind of problem it is.
	Title string `json:"title"`
	// Status is the HTTP status.
	Status int `json:"status"`
	// Detail says what is wrong here, the valid range and what to do.
	Detail string `json:"detail,omitempty"`
	// Field is the JSON path of what has to be mended.
	Field string `json:"field,omitempty"`
	// Also are the other fields that have to be mended, 50 at most.
	Also []FieldProblem `json:"also,omitempty"`
	// Condition is why a charging method has no answer now: a code with its figures.
	Condition *fact.Fact `json:"condition,omitempty"`
}

// A FieldProblem is what is wrong with a field, the valid range and what to do.
type FieldProblem struct {
	Field  string `json:"field"`
	Detail string `json:"detail"`
}

// Problems are the kinds there are, each with its title and status.
var Problems = []Problem{
	{Type: "/problems/malformed", Title: "The document cannot be read.",
		Status: http.StatusBadRequest},
	{Type: "/problems/path", Title: "There is nothing at this path.", Status: http.StatusNotFound},
	{Type: "/problems/unknown-refrigerant", Title: "The refrigerant is not known.",
		Status: http.StatusNotFound},
	{Type: "/problems/method", Title: "The path answers to another method.",
		Status: http.StatusMethodNotAllowed},
	{Type: "/problems/timeout", Title: "The request took too long to arrive.",
		Status: http.StatusRequestTimeout},
	{Type: "/problems/too-large", Title: "The request is too large.",
		Status: http.StatusRequestEntityTooLarge},
	{Type: "/problems/media-type", Title: "The request is in another format.",
		Status: http.StatusUnsupportedMediaType},
	{Type: "/problems/input", Title: "A value has to be mended.",
		Status: http.StatusUnprocessableEntity},
	{Type: "/problems/not-now", Status: http.StatusUnprocessableEntity,
		Title: "The charging method has no answer under these conditions."},
	{Type: "/problems/too-many", Title: "The client has too many requests under way.",
		Status: http.StatusTooManyRequests},
	{Type: "/problems/internal", Title: "The service failed at this request.",
		Status: http.StatusInternalServerError},
	{Type: "/problems/busy", Title: "All workers are at work.",
		Status: http.StatusServiceUnavailable},
	{Type: "/problems/stopping", Title: "The service is stopping.",
		Status: http.StatusServiceUnavailable},
}

// ProblemOf returns a problem of a kind, "input", with its detail; nil where there is
// no such kind.
func ProblemOf(kind, detail string) *Problem {
	for _, p := range Problems {
		if p.Type == "/problems/"+kind {
			p.Detail = detail
			return &p
		}
	}
	return nil
}

// A QuestionError says which field of a question has to be mended.
type QuestionError struct{ Field, Problem string }

// Error implements error.
func (e *QuestionError) Error() string { return e.Field + ": " + e.Problem }

// one says that exactly one is given.
func one(given ...bool) bool {
	count := 0
	for _, is := range given {
		if is {
			count++
		}
	}
	return count == 1
}
