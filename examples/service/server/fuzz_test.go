package server

import (
	"encoding/json"
	"log/slog"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"

	"github.com/satline/satline/examples/service/api"
)

// Whatever is sent, the answer is one that the description has, and never a
// failure of the service.
func FuzzRequests(f *testing.F) {
	s := newService(slog.New(slog.DiscardHandler), usual())
	doc := readDescription(f)
	var posts []api.Operation
	for _, o := range api.Operations {
		if o.Method == "POST" && o.Media == api.JSON {
			posts = append(posts, o)
			f.Add(uint8(len(posts)-1), o.Example)
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, body string) {
		o := posts[int(which)%len(posts)]
		r := httptest.NewRequest(o.Method, o.Path, strings.NewReader(body))
		r.Header.Set("Content-Type", api.JSON)
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		kinds, _ := doc.answers(o.Method, o.Path, strconv.Itoa(w.Code))
		if _, ok := kinds[w.Header().Get("Content-Type")]; !ok || w.Code >= 500 {
			t.Fatalf("%d %s: %s", w.Code, w.Header().Get("Content-Type"), w.Body)
		}
		if !json.Valid(w.Body.Bytes()) {
			t.Errorf("not JSON: %s", w.Body)
		}
		record(t, exchange{o.Method, o.Path, api.JSON, body, w.Header().Get("Content-Type"), w.Code,
			w.Body.String()})
	})
}
