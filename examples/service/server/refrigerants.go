package server

import (
	"net/http"

	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/refrigerant"
)

func (s *service) refrigerants(w http.ResponseWriter, r *http.Request) *api.Problem {
	return s.send(w, r, api.Refrigerants())
}

func (s *service) refrigerant(w http.ResponseWriter, r *http.Request) *api.Problem {
	fluid, err := refrigerant.Lookup(r.PathValue("name"))
	if err != nil {
		return problemOfType("unknown-refrigerant", err.Error())
	}
	return s.send(w, r, api.Sheet(fluid))
}

// kindOfProblem answers for the address that is the type of a problem.
func (s *service) kindOfProblem(w http.ResponseWriter, r *http.Request) *api.Problem {
	for _, p := range api.Problems {
		if p.Type == r.URL.Path {
			return s.send(w, r, p)
		}
	}
	return pathProblem(r.URL.Path)
}

// send answers with what does not change.
func (s *service) send(w http.ResponseWriter, r *http.Request, answer any) *api.Problem {
	units, p := unitsOf(r)
	if p != nil {
		return p
	}
	body, err := units.or(quantity.SI).append(nil, answer)
	if err != nil {
		s.log.Error("not written", "id", w.Header().Get(idHeader), "cause", err)
		return internalProblem()
	}
	constant(w, r, body)
	return nil
}
