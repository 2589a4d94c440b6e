package main

import (
	"log/slog"
	"net/http/httptest"
	"strconv"
	"strings"
	"testing"
)

// Whatever is sent, the answer is one that the description has, and never a
// failure of the service.
func FuzzRequests(f *testing.F) {
	s := newService(slog.New(slog.DiscardHandler), 2, false)
	doc, check := readDescription(f)
	var posts []operation
	for _, o := range operations {
		if o.method == "POST" && o.media == asJSON {
			posts = append(posts, o)
			f.Add(uint8(len(posts)-1), o.example)
		}
	}
	f.Fuzz(func(t *testing.T, which uint8, body string) {
		o := posts[int(which)%len(posts)]
		r := httptest.NewRequest(o.method, o.path, strings.NewReader(body))
		r.Header.Set("Content-Type", asJSON)
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		described, _ := doc.operationAt(o.method, o.path)
		content, ok := described.Responses[strconv.Itoa(w.Code)].Content[w.Header().Get("Content-Type")]
		if !ok || w.Code >= 500 {
			t.Fatalf("%d %s: %s", w.Code, w.Header().Get("Content-Type"), w.Body)
		}
		if err := check.Validate(content.Schema, w.Body.Bytes()); err != nil {
			t.Error(err)
		}
	})
}
