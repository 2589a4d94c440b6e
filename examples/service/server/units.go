package server

import (
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"regexp"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/quantity"
)

// units are those of an answer.
type units struct {
	chosen bool // by ?units=
	exact  bool // every digit, as the library writes values
	system quantity.System
}

// unitsOf reads ?units=IP, SI or exact.
func unitsOf(r *http.Request) (units, *api.Problem) {
	query, err := url.ParseQuery(r.URL.RawQuery)
	if err != nil {
		return units{}, parameterProblem("units",
			fmt.Sprintf("%.40q cannot be read; write ?units=SI", r.URL.RawQuery))
	}
	u := units{}
	for name, values := range query {
		value := values[0]
		u.chosen, u.exact = true, value == "exact"
		switch {
		case name != "units":
			return u, parameterProblem(fmt.Sprintf("%.40s", name),
				fmt.Sprintf("%.40q is no parameter; there is units", name))
		case len(values) > 1:
			return u, parameterProblem("units", "units is given twice")
		case !u.exact && u.system.UnmarshalText([]byte(value)) != nil:
			return u, parameterProblem("units",
				fmt.Sprintf("units is IP, SI or exact, not %.40q", value))
		}
	}
	return u, nil
}

func parameterProblem(name, detail string) *api.Problem {
	p := problemOfType("input", detail)
	p.Field = name
	return p
}

// visit says a visit's sentences in the units of the answer.
func (u units) visit(v satline.Visit) satline.Visit {
	if u.chosen && !u.exact {
		v.Units = u.system
	}
	return v
}

// or is u where it was chosen, and else a system.
func (u units) or(system quantity.System) units {
	if !u.chosen {
		u.system = system
	}
	return u
}

// append appends an answer as JSON.
func (u units) append(to []byte, answer any) ([]byte, error) {
	if u.exact {
		text, err := json.Marshal(answer)
		return append(to, text...), err
	}
	return api.AppendInUnits(to, answer, u.system)
}

// inchPound are numbers with a unit of technicians in inch-pound countries.
var inchPound = regexp.MustCompile(`(?i)[0-9]\s*(°?f|deg ?f|psi[ag]?|ft|in|inhg|btu|lb|oz)\b`)

// systemOf is the system that a question is asked in: inch-pound where any value is.
func systemOf(question []byte) quantity.System {
	if inchPound.Match(question) || strings.Contains(string(question), "℉") {
		return quantity.IP
	}
	return quantity.SI
}
