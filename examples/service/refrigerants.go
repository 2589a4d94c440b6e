package main

import (
	"encoding/json"
	"net/http"

	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/refrigerant"
)

func (s *service) refrigerants(w http.ResponseWriter, _ *http.Request) *api.Problem {
	return s.send(w, api.Refrigerants())
}

func (s *service) refrigerant(w http.ResponseWriter, r *http.Request) *api.Problem {
	fluid, err := refrigerant.Lookup(r.PathValue("name"))
	if err != nil {
		return problemOfType("unknown-refrigerant", err.Error())
	}
	return s.send(w, api.Sheet(fluid))
}

func (s *service) send(w http.ResponseWriter, v any) *api.Problem {
	body, err := json.Marshal(v)
	if err != nil {
		s.log.Error("not written", "id", w.Header().Get(idHeader), "cause", err)
		return internalProblem()
	}
	sendJSON(w, body)
	return nil
}
