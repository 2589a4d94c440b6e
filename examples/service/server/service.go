package server

import (
	"cmp"
	"context"
	"log/slog"
	"net/http"
	"runtime/debug"
	"strconv"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
)

// A service holds no state but its counters.
type service struct {
	set     settings
	log     *slog.Logger
	mux     *http.ServeMux
	origins origins
	clients *clients
	places  chan struct{} // one for each request that is being computed
	batches chan struct{} // one for each batch that is under way
	metrics metrics
	ready   atomic.Bool

	stopping chan struct{} // closed when batches under way are to end
	stop     func()
}

// An endpoint answers a request, or says what is wrong with it.
type endpoint func(w http.ResponseWriter, r *http.Request) *api.Problem

func newService(log *slog.Logger, set settings) *service {
	s := &service{
		set:      set,
		log:      log,
		mux:      http.NewServeMux(),
		origins:  newOrigins(set.origins),
		clients:  newClients(set.clientRequests),
		places:   make(chan struct{}, set.workers),
		batches:  make(chan struct{}, set.batches),
		stopping: make(chan struct{}),
	}
	s.stop = sync.OnceFunc(func() { close(s.stopping) })
	s.ready.Store(true)
	s.serve("POST /v1/assess", answering(s, assessLimits, satline.Assess))
	s.serve("POST /v1/assess/batch", s.batch)
	s.serve("GET /v1/refrigerants", s.refrigerants)
	s.serve("GET /v1/refrigerants/{name}", s.refrigerant)
	s.serve("POST /v1/refrigerant/saturation", answering(s, smallLimits, api.Saturation))
	s.serve("POST /v1/refrigerant/state", answering(s, smallLimits, api.State))
	s.serve("POST /v1/air", answering(s, smallLimits, api.Air))
	s.serve("POST /v1/charge/target", answering(s, smallLimits, api.Target))
	s.serve("GET /problems/{kind}", s.kindOfProblem)
	s.serve("GET /openapi.json", func(w http.ResponseWriter, r *http.Request) *api.Problem {
		constant(w, r, api.Description)
		return nil
	})
	s.serve("/", s.elsewhere)
	return s
}

func (s *service) isStopping() bool {
	select {
	case <-s.stopping:
		return true
	default:
		return false
	}
}

// ServeHTTP answers a request. One that comes while the service is being stopped
// is the last of its connection, so that the next goes to another instance and is
// not lost with the connection.
func (s *service) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	w.Header().Set("Server", "satline/"+version)
	if !s.ready.Load() {
		w.Header().Set("Connection", "close")
	}
	if !s.origins.answer(w, r) {
		s.mux.ServeHTTP(w, r)
	}
}

// serve counts, times and logs an endpoint, and keeps a panic of ours from
// ending more than the request at hand.
func (s *service) serve(pattern string, do endpoint) {
	counter := s.metrics.add(pattern)
	s.mux.HandleFunc(pattern, func(w http.ResponseWriter, r *http.Request) {
		began := time.Now()
		id := requestID(r)
		w.Header().Set(idHeader, id)
		seen := &recorder{ResponseWriter: w}
		out := &packer{ResponseWriter: seen, takes: takesGzip(combined(r, "Accept-Encoding"))}
		s.metrics.underWay.Add(1)
		defer func() {
			cause := recover()
			partial := cause != nil && seen.status != 0
			if cause != nil {
				s.log.Error("panic", "id", id, "pattern", pattern, "cause", cause,
					"stack", string(debug.Stack()))
				if !partial {
					writeProblem(seen, internalProblem())
				}
			}
			took := time.Since(began)
			counter.count(seen.code(), took)
			s.metrics.underWay.Add(-1)
			if !s.set.quiet {
				trace, parent := traceOf(r.Header.Get("Traceparent"))
				s.log.Info("request", "id", id, "trace", trace, "parent", parent,
					"pattern", pattern, "status", seen.code(), "bytes", seen.bytes,
					"took", took.Seconds(), "from", s.client(r))
			}
			if partial {
				panic(http.ErrAbortHandler) // what was sent is not whole: say so by closing
			}
		}()
		client := s.client(r)
		if !s.clients.enter(client) {
			writeProblem(out, tooManyProblem())
			return
		}
		defer s.clients.leave(client)
		if p := do(out, r); p != nil {
			writeProblem(out, p)
		}
		out.end()
	})
}

// placeWait is how long a request waits to be computed before it is told to
// come back.
const placeWait = 5 * time.Second

// computing does work in one of the places there are. A client takes a place
// only once its request has arrived whole, so slow ones take none.
func (s *service) computing(ctx context.Context, work func() *api.Problem) *api.Problem {
	select {
	case s.places <- struct{}{}:
	default:
		timer := time.NewTimer(placeWait)
		defer timer.Stop()
		select {
		case s.places <- struct{}{}:
		case <-timer.C:
			return busyProblem()
		case <-ctx.Done():
			return busyProblem()
		}
	}
	defer func() { <-s.places }()
	return work()
}

// answering makes an endpoint of a function from a JSON document to another.
func answering[Question, Answer any](
	s *service, limits bodyLimits, do func(Question) (Answer, error),
) endpoint {
	return func(w http.ResponseWriter, r *http.Request) *api.Problem {
		units, p := unitsOf(r)
		if p != nil {
			return p
		}
		text, p := readBody(w, r, limits)
		if p != nil {
			hearOut(r)
			return p
		}
		room := rooms.Get().(*[]byte)
		defer rooms.Put(room)
		if p := s.computing(r.Context(), func() *api.Problem {
			var q Question
			if err := limits.decode(text, &q); err != nil {
				return malformedProblem(err)
			}
			v, isVisit := any(&q).(*satline.Visit)
			if isVisit {
				*v = units.visit(*v)
				units = units.or(v.Units)
			} else {
				units = units.or(systemOf(text))
			}
			a, err := do(q)
			if isVisit && err != nil {
				return visitProblem(v, err)
			}
			if err != nil {
				p := problemOf(err)
				p.Field = cmp.Or(p.Field, api.RefusedField(q, err))
				return p
			}
			if *room, err = units.append((*room)[:0], &a); err != nil {
				s.log.Error("not written", "id", w.Header().Get(idHeader), "cause", err)
				return internalProblem()
			}
			return nil
		}); p != nil {
			return p
		}
		*room = append(*room, '\n')
		sendJSON(w, *room)
		return nil
	}
}

// rooms keep the room that an answer has grown into for the next.
var rooms = sync.Pool{New: func() any { return new([]byte) }}

func sendJSON(w http.ResponseWriter, body []byte) {
	w.Header().Set("Content-Type", "application/json")
	w.Header().Set("Content-Length", strconv.Itoa(len(body)))
	w.Write(body)
}

// elsewhere answers what no endpoint does: another method of a path that there
// is, or no such path.
func (s *service) elsewhere(w http.ResponseWriter, r *http.Request) *api.Problem {
	var allowed []string
	for _, method := range []string{http.MethodGet, http.MethodPost} {
		other := r.Clone(r.Context())
		other.Method = method
		if _, pattern := s.mux.Handler(other); pattern != "" && pattern != "/" {
			allowed = append(allowed, method)
			if method == http.MethodGet {
				allowed = append(allowed, http.MethodHead)
			}
		}
	}
	if len(allowed) > 0 {
		w.Header().Set("Allow", strings.Join(allowed, ", "))
		return methodProblem(allowed)
	}
	return pathProblem(r.URL.Path)
}

// A recorder remembers what was answered.
type recorder struct {
	http.ResponseWriter
	status int
	bytes  int
}

func (r *recorder) code() int {
	if r.status == 0 {
		return http.StatusOK
	}
	return r.status
}

func (r *recorder) WriteHeader(status int) {
	if r.status == 0 {
		r.status = status
	}
	r.ResponseWriter.WriteHeader(status)
}

func (r *recorder) Write(b []byte) (int, error) {
	if r.status == 0 {
		r.status = http.StatusOK
	}
	n, err := r.ResponseWriter.Write(b)
	r.bytes += n
	return n, err
}

// Unwrap lets http.ResponseController flush.
func (r *recorder) Unwrap() http.ResponseWriter { return r.ResponseWriter }
