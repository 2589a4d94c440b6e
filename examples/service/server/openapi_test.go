package server

import (
	"encoding/json"
	"net/http"
	"slices"
	"strings"
	"testing"

	"github.com/satline/satline/examples/service/api"
)

func TestEveryEndpointIsDescribed(t *testing.T) {
	s := quietService(t)
	for _, c := range s.metrics.counters {
		if c.pattern == "/" {
			continue
		}
		if !slices.ContainsFunc(
			api.Operations, func(o api.Operation) bool { return o.Method+" "+o.Path == c.pattern },
		) {
			t.Errorf("%s is served and not described", c.pattern)
		}
	}
	for _, o := range api.Operations {
		r, err := http.NewRequest(o.Method, "http://localhost"+o.Address(), nil)
		if err != nil {
			t.Fatal(err)
		}
		if _, pattern := s.mux.Handler(r); pattern != o.Method+" "+o.Path {
			t.Errorf("%s %s is described and served by %q", o.Method, o.Path, pattern)
		}
	}
}

// published is openapi.json as far as statuses and media types.
type published struct {
	Paths map[string]map[string]struct {
		Responses map[string]struct{ Content map[string]json.RawMessage }
	}
}

func readDescription(t testing.TB) published {
	t.Helper()
	var d published
	if err := json.Unmarshal(api.Description, &d); err != nil {
		t.Fatal(err)
	}
	return d
}

// answers are the media types that the description has for the answers to a request
// with a status, and whether it has the request at all.
func (d published) answers(
	method, path, status string,
) (media map[string]json.RawMessage, described bool) {
	for p := range d.Paths {
		if head, _, ok := strings.Cut(p, "{"); ok && strings.HasPrefix(path, head) {
			path = p
		}
	}
	o, described := d.Paths[path][strings.ToLower(method)]
	return o.Responses[status].Content, described
}
