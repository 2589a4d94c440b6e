package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net/http"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/strictjson"
)

const (
	maxBatchLines = 100_000
	// lineTimeout is how long one line of a batch may take to arrive, and its
	// result to be taken away.
	lineTimeout = 15 * time.Second
)

// batch answers each line as it comes, in order. A line that is bad or too long
// has a problem for its answer and does not end the batch; being stopped does,
// and says at which line.
func (s *service) batch(w http.ResponseWriter, r *http.Request) *api.Problem {
	if p := needs(w, r, "application/x-ndjson"); p != nil {
		return p
	}
	control := http.NewResponseController(w)
	// Results start before the request has been read to its end.
	if err := control.EnableFullDuplex(); err != nil && !errors.Is(err, http.ErrNotSupported) {
		return internalProblem()
	}
	w.Header().Set("Content-Type", "application/x-ndjson")
	// What is left of a batch that ended early is not the next request.
	w.Header().Set("Connection", "close")
	out := json.NewEncoder(w)
	in := lineReader{in: bufio.NewReaderSize(r.Body, 64<<10)}
	ended := make(chan struct{})
	defer close(ended)
	go func() {
		select {
		case <-s.stopping:
			control.SetReadDeadline(time.Now()) // wait for no more lines
		case <-ended:
		}
	}()
	for n := 1; ; n++ {
		deadline := time.Now().Add(s.lineTimeout)
		control.SetReadDeadline(deadline)
		control.SetWriteDeadline(deadline.Add(s.lineTimeout))
		if s.isStopping() {
			out.Encode(api.BatchResult{Line: n, Problem: stoppingProblem()})
			return nil
		}
		result := api.BatchResult{Line: n}
		text, err := in.next()
		switch {
		case err == io.EOF:
			return nil
		case err != nil && s.isStopping():
			out.Encode(api.BatchResult{Line: n, Problem: stoppingProblem()})
			return nil
		case err == errLongLine:
			result.Problem = tooLargeProblem(satline.MaxVisitBytes)
		case err != nil:
			out.Encode(api.BatchResult{Line: n, Problem: cutProblem(err, "this line")})
			return nil
		case n > maxBatchLines:
			out.Encode(
				api.BatchResult{
					Line: n,
					Problem: problemOfType(
						"too-large",
						fmt.Sprintf(
							"a batch has at most %d lines; send this line and those after it in another",
							maxBatchLines,
						),
					),
				},
			)
			return nil
		case len(bytes.TrimSpace(text)) == 0:
			continue
		default:
			result = s.line(r, n, text)
		}
		s.metrics.line(result)
		if out.Encode(result) != nil {
			return nil
		}
		// Send what there is when no whole line has come that is still to do.
		if !in.more() && control.Flush() != nil {
			return nil
		}
	}
}

func (s *service) line(r *http.Request, n int, text []byte) api.BatchResult {
	result := api.BatchResult{Line: n}
	result.Problem = s.computing(r.Context(), func() *api.Problem {
		v, err := satline.DecodeVisit(text)
		if at, ok := errors.AsType[*strictjson.Error](err); ok {
			at.Line = n
			return malformedProblem(at)
		}
		if err != nil {
			return problemOf(err)
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

var errLongLine = errors.New("the line is too long")

// A lineReader reads lines, and passes over those that are too long.
type lineReader struct {
	in   *bufio.Reader
	line []byte
}

// more says whether a whole line is there without waiting.
func (l *lineReader) more() bool {
	waiting, _ := l.in.Peek(l.in.Buffered())
	return bytes.IndexByte(waiting, '\n') >= 0
}

func (l *lineReader) next() ([]byte, error) {
	l.line = l.line[:0]
	long := false
	for {
		part, err := l.in.ReadSlice('\n')
		if long = long || len(l.line)+len(bytes.TrimSuffix(part, []byte("\n"))) > satline.MaxVisitBytes; !long {
			l.line = append(l.line, part...)
		}
		switch {
		case err == bufio.ErrBufferFull:
			continue
		case err == io.EOF && len(l.line) == 0 && !long:
			return nil, io.EOF
		case err != nil && err != io.EOF:
			return nil, err
		case long:
			return nil, errLongLine
		}
		return l.line, nil
	}
}
