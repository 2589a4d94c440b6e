package main

import (
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"strings"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/strictjson"
)

// bodyLimits bound what is read of a request.
type bodyLimits strictjson.Limits

var (
	assessLimits = bodyLimits{Bytes: satline.MaxVisitBytes, Depth: 16, Items: 5000}
	smallLimits  = bodyLimits{Bytes: 16 << 10, Depth: 4, Items: 50}
)

func (l bodyLimits) decode(text []byte, into any) error {
	return strictjson.Decode(text, into, strictjson.Limits(l))
}

func readBody(w http.ResponseWriter, r *http.Request, l bodyLimits) ([]byte, *api.Problem) {
	if p := needs(w, r, "application/json"); p != nil {
		return nil, p
	}
	if r.ContentLength > int64(l.Bytes) {
		return nil, tooLargeProblem(int64(l.Bytes))
	}
	text, err := io.ReadAll(http.MaxBytesReader(w, r.Body, int64(l.Bytes)))
	var large *http.MaxBytesError
	switch {
	case errors.As(err, &large):
		return nil, tooLargeProblem(large.Limit)
	case err != nil:
		return nil, cutProblem(err, "its body")
	}
	return text, nil
}

// needs refuses a request in another media type, or packed, and says in a header
// what would be taken.
func needs(w http.ResponseWriter, r *http.Request, media string) *api.Problem {
	got := r.Header.Get("Content-Type")
	if kind, _, err := mime.ParseMediaType(got); err != nil || kind != media {
		w.Header().Set("Accept", media)
		return mediaProblem(media, got)
	}
	if coding := r.Header.Get("Content-Encoding"); coding != "" &&
		!strings.EqualFold(coding, "identity") {
		w.Header().Set("Accept-Encoding", "identity")
		return problemOfType(
			"media-type",
			fmt.Sprintf("send the body as it is, not in Content-Encoding %.60q", coding),
		)
	}
	return nil
}
