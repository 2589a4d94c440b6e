package satline

import (
	"fmt"
	"slices"
	"strings"

	"github.com/satline/satline/internal/diagnose"
	"github.com/satline/satline/quantity"
)

// A Check is the answer to a look or test: the gauges were held open to the air
// and stand at zero. It is about the machine as the readings of the visit show it,
// and about the instruments that they were taken with. Where a check finds an
// instrument off, put it right, take its readings again, and give the check with
// those as one that found nothing.
type Check struct {
	// Look is the code of the look or test: Look.Code, Measurement.Look.
	Look string `json:"look" strict:"required"`
	// Found says whether it found what it was after: Look.Found against
	// Look.NotFound.
	Found bool `json:"found" strict:"required"`
}

// A Look is something that can be looked at or tried on a machine beyond its
// readings, with a yes or no.
type Look struct {
	// Code names it in a Check.
	Code string `json:"code"`
	// Name says in short what is looked at: "the zero of both gauges".
	Name string `json:"name"`
	// Take says what to do.
	Take string `json:"take"`
	// Found and NotFound say what the two answers are: "off zero", "at zero".
	Found    string `json:"found"`
	NotFound string `json:"notFound"`
}

// Looks lists all, in sentences of the system of units.
func Looks(sys quantity.System) []Look {
	var out []Look
	for _, l := range diagnose.Looks(sys) {
		out = append(out, Look{l.Code, l.Name, l.Take, l.Yes, l.No})
	}
	return out
}

func checkChecks(checks []Check) error {
	if len(checks) == 0 {
		return nil
	}
	codes := []string{}
	for _, l := range Looks(quantity.SI) {
		codes = append(codes, l.Code)
	}
	for i, c := range checks {
		field := fmt.Sprintf("checks[%d].look", i)
		switch {
		case !slices.Contains(codes, c.Look):
			return &VisitError{Field: field, Problem: fmt.Sprintf("%q is none of the looks there are; give one of %s", c.Look, strings.Join(codes, ", "))}
		case slices.ContainsFunc(checks[:i], func(b Check) bool { return b.Look == c.Look }):
			return &VisitError{Field: field, Problem: fmt.Sprintf("%q is answered twice; keep the later answer", c.Look)}
		}
	}
	return nil
}

// answers are the checks as the diagnosis takes them.
func (v *Visit) answers() []diagnose.Answer {
	var out []diagnose.Answer
	for _, c := range v.Checks {
		out = append(out, diagnose.Answer{Code: c.Look, Yes: c.Found})
	}
	return out
}
