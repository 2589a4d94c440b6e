package server

import (
	"bytes"
	"compress/gzip"
	"errors"
	"io"
	"net/http"
	"strconv"
	"strings"
	"sync"

	"github.com/satline/satline/examples/service/api"
)

// packedFrom is the length from which an answer is worth packing: a packet of the net.
const packedFrom = 1400

var packers = sync.Pool{New: func() any {
	z, _ := gzip.NewWriterLevel(nil, gzip.BestSpeed)
	return z
}}

// A packer sends what is long enough with gzip to those who take it: at once what is written
// whole, as its Content-Length tells, and the results of a batch as they come.
type packer struct {
	http.ResponseWriter
	takes, begun bool
	z            *gzip.Writer // of a batch
}

func (p *packer) WriteHeader(status int) {
	p.begun = true
	p.ResponseWriter.WriteHeader(status)
}

func (p *packer) Write(b []byte) (int, error) {
	if !p.begun {
		p.begun = true
		h := p.Header()
		h.Add("Vary", "Accept-Encoding")
		switch {
		case !p.takes:
		case h.Get("Content-Type") == api.NDJSON:
			h.Set("Content-Encoding", "gzip")
			p.z = packers.Get().(*gzip.Writer)
			p.z.Reset(p.ResponseWriter)
		case len(b) >= packedFrom && h.Get("Content-Length") == strconv.Itoa(len(b)):
			return p.whole(b)
		}
	}
	if p.z != nil {
		return p.z.Write(b)
	}
	return p.ResponseWriter.Write(b)
}

// appendGzip appends a text packed with gzip.
func appendGzip(to, text []byte) []byte {
	out := bytes.NewBuffer(to)
	z := packers.Get().(*gzip.Writer)
	defer packers.Put(z)
	z.Reset(out)
	z.Write(text) // a buffer takes all
	z.Close()
	return out.Bytes()
}

// whole sends a whole answer packed.
func (p *packer) whole(b []byte) (int, error) {
	room := rooms.Get().(*[]byte)
	defer rooms.Put(room)
	*room = appendGzip((*room)[:0], b)
	h := p.Header()
	h.Set("Content-Encoding", "gzip")
	h.Set("Content-Length", strconv.Itoa(len(*room)))
	if _, err := p.ResponseWriter.Write(*room); err != nil {
		return 0, err
	}
	return len(b), nil
}

// FlushError sends what has been written.
func (p *packer) FlushError() error {
	if p.z != nil {
		if err := p.z.Flush(); err != nil {
			return err
		}
	}
	return http.NewResponseController(p.ResponseWriter).Flush()
}

// Unwrap lets http.ResponseController set deadlines.
func (p *packer) Unwrap() http.ResponseWriter { return p.ResponseWriter }

// end sends what is left of a packed batch.
func (p *packer) end() {
	if p.z != nil {
		p.z.Close()
		packers.Put(p.z)
		p.z = nil
	}
}

// takesGzip reads an Accept-Encoding (RFC 9110, 12.5.3).
func takesGzip(header string) bool {
	any := false
	for coding := range strings.SplitSeq(header, ",") {
		name, weight, _ := strings.Cut(coding, ";")
		_, q, weighed := strings.Cut(weight, "=")
		is := true
		if v, err := strconv.ParseFloat(strings.TrimSpace(q), 64); weighed &&
			(err != nil || v == 0) {
			is = false
		}
		switch strings.ToLower(strings.TrimSpace(name)) {
		case "gzip", "x-gzip":
			return is
		case "*":
			any = is
		}
	}
	return any
}

// unpacked is the body of a request as it was before it was packed.
func unpacked(r *http.Request) (io.Reader, error) {
	switch strings.ToLower(r.Header.Get("Content-Encoding")) {
	case "gzip", "x-gzip":
		return gzip.NewReader(r.Body)
	}
	return r.Body, nil
}

// isPacking says whether an error is one of the packing, not of the net.
func isPacking(err error) bool {
	return errors.Is(err, gzip.ErrHeader) || errors.Is(err, gzip.ErrChecksum)
}
