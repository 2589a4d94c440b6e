package server

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"net/http"
	"os"
	"runtime"
	"sync"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
	"github.com/satline/satline/quantity"
	"github.com/satline/satline/strictjson"
)

const (
	maxBatchLines = 100_000
	// maxLine is what is passed over of a line that is too long before the batch ends.
	maxLine = 16 * satline.MaxVisitBytes
)

// batch answers each line as it comes, in order. A line that is bad or too long
// has a problem for its answer and does not end the batch; being stopped does, the end
// of the batch's time and of its lines, and says at which line.
func (s *service) batch(w http.ResponseWriter, r *http.Request) *api.Problem {
	control := http.NewResponseController(w)
	// Results and refusals are sent before the request has been read to its end.
	if err := control.EnableFullDuplex(); err != nil && !errors.Is(err, http.ErrNotSupported) {
		return internalProblem()
	}
	// What is left of a batch that ended early is not the next request.
	w.Header().Set("Connection", "close")
	p := s.answerBatch(w, r, control)
	if p != nil {
		takeRest(r, s.set.grace)
	}
	control.SetReadDeadline(time.Now()) // wait for no more lines
	return p
}

func (s *service) answerBatch(
	w http.ResponseWriter, r *http.Request, control *http.ResponseController,
) *api.Problem {
	if p := needs(w, r, "application/x-ndjson"); p != nil {
		return p
	}
	units, p := unitsOf(r)
	if p != nil {
		return p
	}
	select {
	case s.batches <- struct{}{}:
		defer func() { <-s.batches }()
	default:
		return busyProblem()
	}
	control.SetReadDeadline(time.Now().Add(s.set.lineTime))
	body, err := unpacked(r)
	if err != nil {
		return cutProblem(err, "its body")
	}
	w.Header().Set("Content-Type", api.NDJSON)
	ended := make(chan struct{})
	var watch sync.WaitGroup
	watch.Go(func() {
		select {
		case <-s.stopping:
			control.SetReadDeadline(time.Now()) // wait for no more lines
		case <-ended:
		}
	})
	unwatch := sync.OnceFunc(func() { close(ended); watch.Wait() })
	defer unwatch()
	in := lineReader{in: bufio.NewReaderSize(body, 64<<10)}
	out := results{bufio.NewWriterSize(w, 32<<10), control}
	room := rooms.Get().(*[]byte)
	defer rooms.Put(room)
	send := func(result api.BatchResult) error {
		s.metrics.line(result)
		of := units.or(quantity.SI)
		if result.Assessment != nil {
			of = units.or(result.Assessment.Units)
		}
		var err error
		if *room, err = of.append((*room)[:0], &result); err != nil {
			return err
		}
		*room = append(*room, '\n')
		_, err = out.Write(*room)
		return err
	}
	last := s.lines(r, units, &in, send, out)
	unwatch()
	if last != nil && send(*last) == nil {
		takeRest(r, s.set.grace)
	}
	out.Flush()
	return nil
}

// results are those that go to a client many at a time, where it sends many.
type results struct {
	*bufio.Writer
	control *http.ResponseController
}

// flush sends what there is.
func (r results) flush() error {
	if err := r.Flush(); err != nil {
		return err
	}
	return r.control.Flush()
}

// lines answers line by line, and returns the result that ends the batch of a client that
// may still be sending.
func (s *service) lines(r *http.Request, units units, in *lineReader,
	send func(api.BatchResult) error, out results) (last *api.BatchResult) {
	over := time.Now().Add(s.set.batchTime)
	idle := time.Now().Add(s.set.lineTime)
	for n := 1; ; n++ {
		deadline := idle
		if over.Before(deadline) {
			deadline = over
		}
		out.control.SetReadDeadline(deadline)
		out.control.SetWriteDeadline(time.Now().Add(2 * s.set.lineTime))
		result := api.BatchResult{Line: n}
		var text []byte
		var err error
		if !s.isStopping() {
			text, err = in.next()
		}
		blank := err == nil && len(bytes.TrimSpace(text)) == 0
		switch {
		case err == io.EOF:
			return nil
		case s.isStopping() && (err != nil || text == nil):
			result.Problem = stoppingProblem()
			return &result
		case n > maxBatchLines:
			result.Problem = problemOfType("too-large", fmt.Sprintf(
				"a batch has at most %d lines; send this line and those after it in another",
				maxBatchLines))
			return &result
		case time.Now().After(over):
			result.Problem = problemOfType("timeout", fmt.Sprintf("a batch takes at most %v; send "+
				"this line and those after it in another", s.set.batchTime))
			return &result
		case err == errEndless, err != nil && err != errLongLine:
			result.Problem = cutProblem(err, "this line")
			return &result
		case err == errLongLine:
			result.Problem = tooLargeProblem(satline.MaxVisitBytes)
		case blank && time.Now().After(idle):
			result.Problem = cutProblem(os.ErrDeadlineExceeded, "a visit")
			return &result
		case blank:
			continue
		default:
			result.Problem = s.line(r, units, &result, text)
		}
		idle = time.Now().Add(s.set.lineTime)
		if send(result) != nil {
			return nil
		}
		// Send what there is when no whole line has come that is still to do. Where one has,
		// others go first: lines of batches by themselves pass the core from one to the next,
		// and a question about health waited for a fifth of a second.
		if in.more() {
			runtime.Gosched()
		} else if out.flush() != nil {
			return nil
		}
	}
}

// line assesses the visit of one line.
func (s *service) line(r *http.Request, units units, result *api.BatchResult,
	text []byte) *api.Problem {
	return s.computing(r.Context(), func() *api.Problem {
		v, err := satline.DecodeVisit(text)
		if at, ok := errors.AsType[*strictjson.Error](err); ok {
			at.Line = result.Line
			return malformedProblem(at)
		}
		if err != nil {
			return problemOf(err)
		}
		a, err := satline.Assess(units.visit(v))
		if err != nil {
			return visitProblem(&v, err)
		}
		result.Assessment = &a
		return nil
	})
}

var (
	errLongLine = errors.New("the line is too long")
	errEndless  = errors.New("the line is far too long")
)

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
	length := 0
	for {
		part, err := l.in.ReadSlice('\n')
		length += len(part)
		long := length-bytes.Count(part, []byte("\n")) > satline.MaxVisitBytes
		if !long {
			l.line = append(l.line, part...)
		}
		switch {
		case err == bufio.ErrBufferFull && length > maxLine:
			return nil, errEndless
		case err == bufio.ErrBufferFull:
			continue
		case err == io.EOF && length == 0:
			return nil, io.EOF
		case err != nil && err != io.EOF:
			return nil, err
		case long:
			return nil, errLongLine
		}
		return l.line, nil
	}
}
