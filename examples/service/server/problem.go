package server

import (
	"errors"
	"fmt"
	"net/http"
	"os"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/charge"
	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
	"github.com/satline/satline/strictjson"
)

// writeProblem answers with a problem.
func writeProblem(w http.ResponseWriter, p *api.Problem) {
	w.Header().Set("Content-Type", "application/problem+json")
	if p.Status == http.StatusServiceUnavailable || p.Status == http.StatusTooManyRequests {
		w.Header().Set("Retry-After", "1")
	}
	w.WriteHeader(p.Status)
	body, err := api.AppendInUnits(nil, p, quantity.IP) // as its condition is worded
	if err == nil {
		w.Write(append(body, '\n'))
	}
}

func problemOfType(kind, detail string) *api.Problem {
	if p := api.ProblemOf(kind, detail); p != nil {
		return p
	}
	return internalProblem()
}

// problemOf turns an error of the library into a problem.
func problemOf(err error) *api.Problem {
	var visit *satline.VisitError
	var notNow *charge.NotNowError
	var asked *api.QuestionError
	p := problemOfType("input", err.Error())
	switch {
	case errors.As(err, &notNow):
		p = problemOfType("not-now", notNow.Error())
		says := notNow.Says()
		says.Text = satline.Say(says, satline.English, quantity.IP)
		p.Condition = &says
	case errors.As(err, &visit):
		p.Field = visit.Field
	case errors.As(err, &asked):
		p.Field = asked.Field
	case errors.Is(err, refrigerant.ErrUnknownRefrigerant):
		p.Field = "refrigerant"
	}
	return p
}

// visitProblem is that of a visit that was refused, with all that has to be mended in it.
func visitProblem(v *satline.Visit, err error) *api.Problem {
	const most = 50
	p := problemOf(err)
	for i, x := range v.Validate() {
		if i > 0 && i <= most {
			p.Also = append(p.Also, api.FieldProblem{Field: x.Field, Detail: x.Problem})
		}
	}
	return p
}

func malformedProblem(err error) *api.Problem {
	p := problemOfType("malformed", err.Error())
	var at *strictjson.Error
	if errors.As(err, &at) {
		p.Field = at.Path
		for _, x := range at.Also {
			p.Also = append(p.Also, api.FieldProblem{Field: x.Path, Detail: x.Problem})
		}
	}
	return p
}

func tooLargeProblem(limit int) *api.Problem {
	return problemOfType("too-large", fmt.Sprintf("at most %d bytes are read", limit))
}

// cutProblem is that of a request that did not arrive whole.
func cutProblem(err error, what string) *api.Problem {
	switch {
	case errors.Is(err, os.ErrDeadlineExceeded):
		return problemOfType("timeout", "the time was up before "+what+" had arrived")
	case isPacking(err):
		return problemOfType("malformed", "what was sent is not packed with gzip, as it says it is")
	case errors.Is(err, errEndless):
		return problemOfType("too-large", "the line is so long that those after it were not read")
	}
	return problemOfType("malformed", "the request ended before "+what+" had arrived")
}

func mediaProblem(want, got string) *api.Problem {
	if got == "" {
		return problemOfType("media-type", "send Content-Type "+want)
	}
	return problemOfType("media-type", fmt.Sprintf("send Content-Type %s, not %.60q", want, got))
}

func methodProblem(allowed []string) *api.Problem {
	return problemOfType("method", "use "+strings.Join(allowed, " or "))
}

func pathProblem(path string) *api.Problem {
	return problemOfType("path", fmt.Sprintf("%.80q is not here; see /openapi.json", path))
}

func busyProblem() *api.Problem { return problemOfType("busy", "try again in a second") }

func tooManyProblem() *api.Problem {
	return problemOfType("too-many", "wait for the answers to those that are under way")
}

func stoppingProblem() *api.Problem {
	return problemOfType("stopping", "send this line and those after it again")
}

func internalProblem() *api.Problem {
	return &api.Problem{
		Type:   "/problems/internal",
		Title:  "The service failed at this request.",
		Status: http.StatusInternalServerError,
	}
}
