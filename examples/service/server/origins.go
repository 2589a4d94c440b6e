package server

import (
	"net/http"
	"slices"
	"strings"
)

// origins are those whose pages may ask (CORS, the Fetch standard of WHATWG).
type origins []string

func newOrigins(list string) origins {
	var out origins
	for o := range strings.SplitSeq(list, ",") {
		if o = strings.TrimSpace(o); o != "" {
			out = append(out, o)
		}
	}
	return out
}

// answer lets a page of one of the origins read what is answered, and says whether the
// request was only the question whether it may ask, which is answered with that.
func (o origins) answer(w http.ResponseWriter, r *http.Request) (done bool) {
	origin := r.Header.Get("Origin")
	if len(o) == 0 {
		return false
	}
	h := w.Header()
	h.Add("Vary", "Origin")
	if origin == "" || !slices.Contains(o, origin) && !slices.Contains(o, "*") {
		return false
	}
	h.Set("Access-Control-Allow-Origin", origin)
	h.Set("Access-Control-Expose-Headers", "ETag, Retry-After, Server, "+idHeader)
	if r.Method != http.MethodOptions || r.Header.Get("Access-Control-Request-Method") == "" {
		return false
	}
	h.Set("Access-Control-Allow-Methods", "GET, HEAD, POST")
	h.Set("Access-Control-Allow-Headers",
		"Content-Type, Content-Encoding, If-None-Match, Traceparent, Tracestate, "+idHeader)
	h.Set("Access-Control-Max-Age", "86400")
	w.WriteHeader(http.StatusNoContent)
	return true
}
