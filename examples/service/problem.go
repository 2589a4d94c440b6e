package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"os"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/internal/strictjson"
	"github.com/satline/satline/refrigerant"
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
	// Instead says what to do where a charging method has no answer now.
	Instead string `json:"instead,omitempty"`
}

func (p *Problem) write(w http.ResponseWriter) {
	w.Header().Set("Content-Type", "application/problem+json")
	if p.Status == http.StatusServiceUnavailable {
		w.Header().Set("Retry-After", "1")
	}
	w.WriteHeader(p.Status)
	json.NewEncoder(w).Encode(p)
}

// problemTypes are the kinds there are, each with its title and status.
var problemTypes = []Problem{
	{Type: "/problems/malformed", Title: "The document cannot be read.", Status: http.StatusBadRequest},
	{Type: "/problems/path", Title: "There is nothing at this path.", Status: http.StatusNotFound},
	{Type: "/problems/unknown-refrigerant", Title: "The refrigerant is not known.", Status: http.StatusNotFound},
	{Type: "/problems/method", Title: "The path answers to another method.", Status: http.StatusMethodNotAllowed},
	{Type: "/problems/timeout", Title: "The request took too long to arrive.", Status: http.StatusRequestTimeout},
	{Type: "/problems/too-large", Title: "The request is too large.", Status: http.StatusRequestEntityTooLarge},
	{Type: "/problems/media-type", Title: "The request is in another format.", Status: http.StatusUnsupportedMediaType},
	{Type: "/problems/input", Title: "A value has to be mended.", Status: http.StatusUnprocessableEntity},
	{Type: "/problems/not-now", Title: "The charging method has no answer under these conditions.", Status: http.StatusUnprocessableEntity},
	{Type: "/problems/internal", Title: "The service failed at this request.", Status: http.StatusInternalServerError},
	{Type: "/problems/busy", Title: "All workers are at work.", Status: http.StatusServiceUnavailable},
	{Type: "/problems/stopping", Title: "The service is stopping.", Status: http.StatusServiceUnavailable},
}

func problemOfType(kind, detail string) *Problem {
	for _, p := range problemTypes {
		if p.Type == "/problems/"+kind {
			p.Detail = detail
			return &p
		}
	}
	return internalProblem()
}

// problemOf turns an error of the library into a problem.
func problemOf(err error) *Problem {
	var visit *satline.VisitError
	var notNow *charge.NotNowError
	var asked *questionError
	p := problemOfType("input", err.Error())
	switch {
	case errors.As(err, &notNow):
		p = problemOfType("not-now", notNow.Error())
		p.Instead = notNow.Instead()
	case errors.As(err, &visit):
		p.Field = visit.Field
	case errors.As(err, &asked):
		p.Field = asked.field
	case errors.Is(err, refrigerant.ErrUnknownRefrigerant):
		p.Field = "refrigerant"
	}
	return p
}

func malformedProblem(err error) *Problem {
	p := problemOfType("malformed", err.Error())
	var at *strictjson.Error
	if errors.As(err, &at) {
		p.Field = at.Path
	}
	return p
}

func tooLargeProblem(limit int64) *Problem {
	return problemOfType("too-large", fmt.Sprintf("at most %d bytes are read", limit))
}

// cutProblem is that of a request that did not arrive whole.
func cutProblem(err error, what string) *Problem {
	if errors.Is(err, os.ErrDeadlineExceeded) {
		return problemOfType("timeout", "the time was up before "+what+" had arrived")
	}
	return problemOfType("malformed", "the request ended before "+what+" had arrived")
}

func mediaProblem(want, got string) *Problem {
	if got == "" {
		return problemOfType("media-type", "send Content-Type "+want)
	}
	return problemOfType("media-type", fmt.Sprintf("send Content-Type %s, not %.60q", want, got))
}

func methodProblem(allowed []string) *Problem {
	return problemOfType("method", "use "+strings.Join(allowed, " or "))
}

func pathProblem(path string) *Problem {
	return problemOfType("path", fmt.Sprintf("%.80q is not here; see /openapi.json", path))
}

func busyProblem() *Problem { return problemOfType("busy", "try again in a second") }

func stoppingProblem() *Problem {
	return problemOfType("stopping", "send this line and those after it again")
}

// kindOfProblem answers for the address that is the type of a problem.
func (s *service) kindOfProblem(w http.ResponseWriter, r *http.Request) *Problem {
	for _, p := range problemTypes {
		if p.Type == r.URL.Path {
			return s.send(w, p)
		}
	}
	return pathProblem(r.URL.Path)
}

func internalProblem() *Problem {
	return &Problem{Type: "/problems/internal", Title: "The service failed at this request.", Status: http.StatusInternalServerError}
}

// A questionError says which field of a question has to be mended.
type questionError struct{ field, problem string }

func (e *questionError) Error() string { return e.field + ": " + e.problem }
