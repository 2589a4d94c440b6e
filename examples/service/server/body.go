package server

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

// bodyLimits bound what is read of a request, unpacked.
type bodyLimits strictjson.Limits

var (
	assessLimits = bodyLimits{Bytes: satline.MaxVisitBytes} // DecodeVisit has the others
	smallLimits  = bodyLimits{Bytes: 16 << 10, Depth: 4, Items: 50}
)

// decode reads a document. A visit may have the decimal comma of its language.
func (l bodyLimits) decode(text []byte, into any) (err error) {
	visit, ok := into.(*satline.Visit)
	if !ok {
		return strictjson.Decode(text, into, strictjson.Limits(l))
	}
	*visit, err = satline.DecodeVisit(text)
	if at, ok := errors.AsType[*strictjson.Error](err); ok {
		return at
	}
	return err
}

func readBody(w http.ResponseWriter, r *http.Request, l bodyLimits) ([]byte, *api.Problem) {
	if p := needs(w, r, "application/json"); p != nil {
		return nil, p
	}
	if r.ContentLength > int64(l.Bytes) {
		return nil, tooLargeProblem(l.Bytes)
	}
	body, err := unpacked(r)
	if err != nil {
		return nil, cutProblem(err, "its body")
	}
	text, err := io.ReadAll(io.LimitReader(body, int64(l.Bytes)+1))
	switch {
	case err != nil:
		return nil, cutProblem(err, "its body")
	case len(text) > l.Bytes:
		w.Header().Set("Connection", "close") // the rest is not the next request
		return nil, tooLargeProblem(l.Bytes)
	}
	return text, nil
}

// hearOut reads on what is not wanted, within reason: many clients send all before they read,
// and would hear of a broken connection instead of the problem. One that asks first whether
// to send its body (Expect: 100-continue) is told at once.
func hearOut(r *http.Request) {
	const most = 16 << 20
	if r.Header.Get("Expect") == "" {
		io.CopyN(io.Discard, r.Body, most)
	}
}

// needs refuses a request in another media type, or packed in another way, and says in
// a header what would be taken.
func needs(w http.ResponseWriter, r *http.Request, media string) *api.Problem {
	got := combined(r, "Content-Type")
	if kind, _, err := mime.ParseMediaType(got); err != nil || kind != media {
		w.Header().Set("Accept", media)
		return mediaProblem(media, got)
	}
	switch coding := combined(r, "Content-Encoding"); strings.ToLower(coding) {
	case "", "identity", "gzip", "x-gzip":
		return nil
	default:
		w.Header().Set("Accept-Encoding", "gzip, identity")
		return problemOfType("media-type",
			fmt.Sprintf("send the body as it is or with gzip, not in Content-Encoding %.60q",
				coding))
	}
}

// combined is a header whose lines stand for one (RFC 9110, 5.3).
func combined(r *http.Request, name string) string {
	return strings.Join(r.Header.Values(name), ", ")
}
