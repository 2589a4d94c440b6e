package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"net/http"
	"time"

	"github.com/satline/satline"
)

const (
	maxBatchLines = 100_000
	// lineTimeout is how long one line of a batch may take to arrive, and its
	// result to be taken away.
	lineTimeout = 15 * time.Second
)

// A BatchResult is what became of one line of a batch.
type BatchResult struct {
	// Line of the batch that it is about, counted from 1.
	Line int `json:"line"`
	// Assessment of the visit, where one was made.
	Assessment *satline.Assessment `json:"assessment,omitempty"`
	// Problem with the visit, where none was.
	Problem *Problem `json:"problem,omitempty"`
}

// batch answers each line as it comes, in order. A bad line does not end the
// batch; one too long to read does.
func (s *service) batch(w http.ResponseWriter, r *http.Request) *Problem {
	if p := needs(r, "application/x-ndjson"); p != nil {
		return p
	}
	control := http.NewResponseController(w)
	// Results start before the request has been read to its end.
	if err := control.EnableFullDuplex(); err != nil && !errors.Is(err, http.ErrNotSupported) {
		return internalProblem()
	}
	w.Header().Set("Content-Type", "application/x-ndjson")
	out := json.NewEncoder(w)
	in := bufio.NewReaderSize(r.Body, 64<<10)
	lines := bufio.NewScanner(in)
	lines.Buffer(make([]byte, 0, 64<<10), satline.MaxVisitBytes+1)
	for n := 1; ; n++ {
		deadline := time.Now().Add(lineTimeout)
		control.SetReadDeadline(deadline)
		control.SetWriteDeadline(deadline.Add(lineTimeout))
		if !lines.Scan() {
			if p := endOfBatch(lines.Err()); p != nil {
				out.Encode(BatchResult{Line: n, Problem: p})
			}
			return nil
		}
		if n > maxBatchLines {
			out.Encode(BatchResult{Line: n, Problem: problemOfType("too-large", "a batch has at most 100000 lines")})
			return nil
		}
		if len(bytes.TrimSpace(lines.Bytes())) == 0 {
			continue
		}
		if out.Encode(s.line(r, n, lines.Bytes())) != nil {
			return nil
		}
		// Send what there is when the client has sent no more to read.
		if in.Buffered() == 0 && control.Flush() != nil {
			return nil
		}
	}
}

func (s *service) line(r *http.Request, n int, text []byte) BatchResult {
	result := BatchResult{Line: n}
	result.Problem = s.computing(r.Context(), func() *Problem {
		v, err := satline.DecodeVisit(text)
		if err != nil {
			return malformedProblem(err)
		}
		a, err := satline.Assess(v)
		if err != nil {
			return problemOf(err)
		}
		result.Assessment = &a
		return nil
	})
	return result
}

func endOfBatch(err error) *Problem {
	switch {
	case err == nil:
		return nil
	case errors.Is(err, bufio.ErrTooLong):
		return tooLargeProblem(satline.MaxVisitBytes)
	}
	return malformedProblem(errors.New("the batch ended, or its time was up, in the middle of a line"))
}
