package server

import (
	"bufio"
	"bytes"
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
)

func quietService(t testing.TB) *service {
	t.Helper()
	return newService(slog.New(slog.DiscardHandler), usual())
}

// A client holds every answer to the statuses and media types of openapi.json, and
// writes what it sends and gets to the file that SATLINE_EXCHANGES names, for those
// who hold it to more.
type client struct {
	t       testing.TB
	service *service
	server  *httptest.Server
	doc     published
}

func newClient(t testing.TB) client {
	t.Helper()
	s := quietService(t)
	server := httptest.NewServer(s)
	t.Cleanup(server.Close)
	return client{t, s, server, readDescription(t)}
}

// do sends a request and returns the answer.
func (c client) do(method, path, media, body string) (status int, answer []byte) {
	c.t.Helper()
	r, err := http.NewRequest(method, c.server.URL+path, strings.NewReader(body))
	if err != nil {
		c.t.Fatal(err)
	}
	if media != "" {
		r.Header.Set("Content-Type", media)
	}
	resp, err := c.server.Client().Do(r)
	if err != nil {
		c.t.Fatal(err)
	}
	defer resp.Body.Close()
	answer, err = io.ReadAll(resp.Body)
	if err != nil {
		c.t.Fatal(err)
	}
	path, _, _ = strings.Cut(path, "?")
	kind, _, _ := strings.Cut(resp.Header.Get("Content-Type"), ";")
	kinds, described := c.doc.answers(method, path, strconv.Itoa(resp.StatusCode))
	if _, ok := kinds[kind]; described && !ok {
		c.t.Errorf(
			"%s %s answers %d in %q, which is not described: %.300s", method, path, resp.StatusCode,
			kind, answer,
		)
	}
	if !described && resp.StatusCode != http.StatusNotFound &&
		resp.StatusCode != http.StatusMethodNotAllowed {
		c.t.Errorf("%s %s is not described and answers %d", method, path, resp.StatusCode)
	}
	record(c.t, exchange{method, path, media, body, kind, resp.StatusCode, string(answer)})
	return resp.StatusCode, answer
}

// An exchange is a request and its answer.
type exchange struct {
	Method, Path, Media, Body, Kind string
	Status                          int
	Answer                          string
}

func record(t testing.TB, e exchange) {
	file := os.Getenv("SATLINE_EXCHANGES")
	if file == "" {
		return
	}
	f, err := os.OpenFile(file, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if err := json.NewEncoder(f).Encode(e); err != nil {
		t.Fatal(err)
	}
}

// Every example in the description is a request that is answered, and every
// endpoint answers.
func TestExamplesOfTheDescription(t *testing.T) {
	c := newClient(t)
	for _, o := range api.Operations {
		body := o.Example
		if o.Media == api.NDJSON {
			body = strings.ReplaceAll(api.ExampleVisit, "\n", " ") + "\n"
		}
		status, answer := c.do(o.Method, o.Address(), o.Media, body)
		if status != http.StatusOK {
			t.Errorf("%s %s: %d %s", o.Method, o.Path, status, answer)
		}
	}
}

func TestAnswers(t *testing.T) {
	c := newClient(t)
	for _, q := range []struct{ path, body, want string }{
		{"/v1/assess", api.ExampleVisit, `"outcome":"undercharged"`},
		{"/v1/refrigerant/saturation", `{"refrigerant": "R-32", "pressure": "1 MPa"}`,
			`"glide":"0.0 K"`},
		{"/v1/refrigerant/saturation",
			`{"refrigerant": "R-407C", "temperature": "5 °C", "barometer": "95 kPa"}`,
			`"bubbleGauge":`},
		{"/v1/refrigerant/state", `{"refrigerant": "R-22", "pressure": "500 kPa", "quality": 0.5}`,
			`"phase":"two-phase"`},
		{"/v1/refrigerant/state",
			`{"refrigerant": "R-22", "pressure": "500 kPa", "enthalpy": "420 kJ/kg"}`,
			`"phase":"vapor"`},
		{"/v1/refrigerant/state",
			`{"refrigerant": "R-22", "pressure": "500 kPa", "entropy": "1 kJ/(kg·K)"}`, `"phase":`},
		{"/v1/air", `{"dryBulb": "75 °F", "relativeHumidity": 0.5}`,
			`"humidityRatio":0.009235703861`},
		{"/v1/air", `{"dryBulb": "75 °F", "dewPoint": "60 °F", "realGas": true}`,
			`"dewPoint":"60.0 °F"`},
		{"/v1/air", `{"dryBulb": "75 °F", "humidityRatio": 0.01, "barometer": "98 kPa"}`,
			`"humidityRatio":0.01`},
		{"/v1/charge/target", `{"method": "subcooling", "label": "9 °F ± 1 °F"}`,
			`"standing":"label"`},
		{"/v1/charge/target", `{"method": "superheat", "label": "12 °F"}`, `"method":"superheat"`},
	} {
		status, answer := c.do("POST", q.path, api.JSON, q.body)
		if status != http.StatusOK || !strings.Contains(string(answer), q.want) {
			t.Errorf("%s %s: %d, want %s in\n%.400s", q.path, q.body, status, q.want, answer)
		}
	}
}

func TestProblems(t *testing.T) {
	c := newClient(t)
	for _, q := range []struct {
		method, path, media, body string
		status                    int
		kind, field, detail       string
	}{
		{"POST", "/v1/assess", api.JSON, `{`, 400, "malformed", "", "ends too early"},
		{"POST", "/v1/assess", api.JSON, ``, 400, "malformed", "", "empty"},
		{"POST", "/v1/assess", api.JSON, "{\"equipment\": \"\xff\"}", 400, "malformed", "",
			"UTF-8"},
		{"POST", "/v1/assess", api.JSON,
			`{"equipment": {"refrigerant": "R-32", "metering": "TXV"},
				"readings": {"liquidLine": 62}}`,
			400, "malformed", "readings.liquidLine", "the unit is missing"},
		{"POST", "/v1/assess", api.JSON, `{"equipment": {"refrigerent": "R-32"}}`, 400, "malformed",
			"equipment.refrigerent", `did you mean "refrigerant"`},
		{"POST", "/v1/assess", api.JSON, strings.Repeat(`{"equipment":`, 40), 400, "malformed",
			"equipment.equipment", "unknown field"},
		{"POST", "/v1/assess", api.JSON,
			`{"equipment": {"refrigerant": "R-32", "metering": "TXV"},
				"readings": {"liquidLine": "900 °C"}}`,
			422, "input", "readings.liquidLine", "valid from"},
		{"POST", "/v1/assess", api.JSON, `{"equipment": {"refrigerant": "R-9", "metering": "TXV"}}`,
			422, "input", "equipment.refrigerant", "R-9"},
		{"POST", "/v1/assess", api.JSON, `{"notes": "` + strings.Repeat("x", 1<<20) + `"}`, 413,
			"too-large", "", "1048576"},
		{"POST", "/v1/assess", "text/xml", `<a/>`, 415, "media-type", "", "application/json"},
		{"POST", "/v1/assess", "", api.ExampleVisit, 415, "media-type", "", "application/json"},
		{"GET", "/v1/assess", "", "", 405, "method", "", "POST"},
		{"DELETE", "/v1/refrigerants", "", "", 405, "method", "", "GET"},
		{"GET", "/v2", "", "", 404, "path", "", "/openapi.json"},
		{"GET", "/v1/refrigerants/R-23456", "", "", 404, "unknown-refrigerant", "", "R-23456"},
		{"POST", "/v1/refrigerant/saturation", api.JSON, `{"refrigerant": "R-32"}`, 422, "input",
			"gauge", "exactly one"},
		{"POST", "/v1/refrigerant/saturation", api.JSON,
			`{"refrigerant": "R-3x", "gauge": "100 psig"}`, 422, "input", "refrigerant", ""},
		{"POST", "/v1/refrigerant/saturation", api.JSON,
			`{"refrigerant": "R-32", "gauge": "100 psig", "elevation": "9000 m"}`, 422, "input",
			"elevation", "valid from"},
		{"POST", "/v1/refrigerant/saturation", api.JSON,
			`{"refrigerant": "R-32", "gauge": "100 psig", "elevation": "90 m",
				"barometer": "100 kPa"}`,
			422, "input", "barometer", "not both"},
		{"POST", "/v1/refrigerant/saturation", api.JSON,
			`{"refrigerant": "R-32", "gauge": "1000000 psig"}`, 422, "input", "", ""},
		{"POST", "/v1/refrigerant/saturation", api.JSON,
			`{"refrigerant": "` + strings.Repeat("x", 17<<10) + `"}`,
			413, "too-large", "", "16384"},
		{"POST", "/v1/refrigerant/state", api.JSON, `{"refrigerant": "R-32", "pressure": "1 MPa"}`,
			422, "input", "temperature", "exactly one"},
		{"POST", "/v1/refrigerant/state", api.JSON,
			`{"refrigerant": "R-32", "pressure": "1 MPa", "quality": 2}`, 422, "input",
			"quality", ""},
		{"POST", "/v1/air", api.JSON, `{"dryBulb": "62 °F", "wetBulb": "75 °F"}`, 422, "input",
			"wetBulb", "wet bulb"},
		{"POST", "/v1/air", api.JSON,
			`{"dryBulb": "62 °F", "wetBulb": "55 °F", "dewPoint": "50 °F"}`,
			422, "input", "wetBulb", "exactly one"},
		{"POST", "/v1/charge/target", api.JSON,
			`{"method": "superheat", "returnWetBulb": "50 °F", "outdoorDryBulb": "110 °F"}`, 422,
			"not-now", "", ""},
		{"POST", "/v1/charge/target", api.JSON, `{"method": "superheat"}`, 422, "input",
			"returnWetBulb", ""},
		{"POST", "/v1/charge/target", api.JSON, `{"method": "weigh-in"}`, 422, "input", "method",
			""},
		{"POST", "/v1/charge/target", api.JSON, `{"method": "approach"}`, 422, "", "", ""},
	} {
		status, answer := c.do(q.method, q.path, q.media, q.body)
		var p api.Problem
		if err := json.Unmarshal(answer, &p); err != nil {
			t.Errorf("%s %.60s: %v: %s", q.path, q.body, err, answer)
			continue
		}
		if status != q.status || p.Status != q.status ||
			q.kind != "" && p.Type != "/problems/"+q.kind ||
			p.Field != q.field ||
			!strings.Contains(p.Detail, q.detail) {
			t.Errorf(
				"%s %s %.60s:\n got %d %+v\nwant %d %s %q %q", q.method, q.path, q.body, status, p,
				q.status, q.kind, q.field, q.detail,
			)
		}
		if q.kind == "not-now" && (p.Condition == nil || p.Condition.Text == "") {
			t.Error("not now, and nothing said of the condition")
		}
	}
}

func TestBatch(t *testing.T) {
	c := newClient(t)
	visit := strings.ReplaceAll(api.ExampleVisit, "\n", " ")
	body := visit + "\n\n{\"equipment\": 3}\n" + visit + "\n" +
		`{"equipment": {"refrigerant": "R-0", "metering": "TXV"}}` + "\n" + visit
	status, answer := c.do("POST", "/v1/assess/batch", api.NDJSON, body)
	if status != http.StatusOK {
		t.Fatalf("%d %s", status, answer)
	}
	var lines []int
	for text := range bytes.Lines(answer) {
		var r struct {
			Line       int
			Assessment *struct{ Charge struct{ Outcome string } }
			Problem    *api.Problem
		}
		if err := json.Unmarshal(text, &r); err != nil {
			t.Fatal(err)
		}
		lines = append(lines, r.Line)
		switch r.Line {
		case 3, 5:
			if r.Problem == nil || r.Assessment != nil {
				t.Errorf("line %d: %s", r.Line, text)
			}
			if r.Line == 3 && !strings.HasPrefix(r.Problem.Detail, "equipment (line 3): ") {
				t.Errorf("the line of the batch is not the one that is named: %s", r.Problem.Detail)
			}
		default:
			if r.Problem != nil || r.Assessment == nil ||
				r.Assessment.Charge.Outcome != string(satline.ChargeLow) {
				t.Errorf("line %d: %s", r.Line, text)
			}
		}
	}
	if got, want := len(lines), 5; got != want {
		t.Errorf("%d results, want %d: %v", got, want, lines)
	}
	_, answer = c.do(
		"POST", "/v1/assess/batch", api.NDJSON,
		visit+"\n"+`{"notes": "`+strings.Repeat("x", 1<<20)+`"}`+"\n"+visit,
	)
	results := bytes.Split(bytes.TrimSpace(answer), []byte("\n"))
	if len(results) != 3 ||
		!bytes.HasPrefix(results[1], []byte(`{"line":2,"problem":{"type":"/problems/too-large"`)) ||
		!bytes.HasPrefix(results[2], []byte(`{"line":3,"assessment"`)) {
		t.Errorf("with a line too long to read: %d results, %.200s", len(results), results[1:])
	}
}

// A line may be as long as a visit may be, with or without a line end, and one
// byte more is too long.
func TestLongestLine(t *testing.T) {
	longest := strings.Repeat("x", satline.MaxVisitBytes)
	in := lineReader{
		in: bufio.NewReaderSize(strings.NewReader(longest+"\n"+longest+"x\n\n"+longest), 64),
	}
	for i, want := range []struct {
		length int
		err    error
	}{{len(longest) + 1, nil}, {0, errLongLine}, {1, nil}, {len(longest), nil}, {0, io.EOF},
		{0, io.EOF}} {
		if text, err := in.next(); len(text) != want.length || err != want.err {
			t.Errorf(
				"line %d: %d bytes, %v; want %d, %v", i+1, len(text), err, want.length, want.err,
			)
		}
	}
}

// The type of every problem is an address that says what it means.
func TestProblemTypesAreAddresses(t *testing.T) {
	c := newClient(t)
	for _, p := range api.Problems {
		status, answer := c.do("GET", p.Type, "", "")
		if status != http.StatusOK || !strings.Contains(string(answer), p.Title) {
			t.Errorf("GET %s: %d %s", p.Type, status, answer)
		}
	}
	if status, _ := c.do("GET", "/problems/none", "", ""); status != http.StatusNotFound {
		t.Errorf("GET /problems/none: %d", status)
	}
}

func TestMethodsAndCodings(t *testing.T) {
	s := quietService(t)
	for _, q := range []struct {
		method, path, coding string
		status               int
		allow                string
		accept               string // or Accept-Encoding
	}{
		{"HEAD", "/v1/refrigerants", "", 200, "", ""}, {"HEAD", "/v1/assess", "", 405, "POST", ""},
		{"OPTIONS", "/v1/assess/batch", "", 405, "POST", ""},
		{"PUT", "/v1/refrigerants/R-32", "", 405, "GET, HEAD", ""},
		{"POST", "/v1/assess", "br", 415, "", "gzip, identity"},
		{"POST", "/v1/assess/batch", "", 415, "", api.NDJSON},
		{"POST", "/v1/assess", "identity", 200, "", ""},
	} {
		r := httptest.NewRequest(q.method, q.path, strings.NewReader(api.ExampleVisit))
		r.Header.Set("Content-Type", api.JSON)
		r.Header.Set("Accept", "text/html") // answers are in the one form there is
		if q.coding != "" {
			r.Header.Set("Content-Encoding", q.coding)
		}
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		if w.Code != q.status || w.Header().Get("Allow") != q.allow {
			t.Errorf(
				"%s %s: %d, Allow %q; want %d, %q", q.method, q.path, w.Code,
				w.Header().Get("Allow"), q.status, q.allow,
			)
		}
		if got := w.Header().Get("Accept") + w.Header().Get("Accept-Encoding"); got != q.accept {
			t.Errorf("%s %s says that it takes %q, want %q", q.method, q.path, got, q.accept)
		}
	}
}

func TestMetrics(t *testing.T) {
	c := newClient(t)
	c.do("POST", "/v1/assess", api.JSON, api.ExampleVisit)
	c.do("POST", "/v1/assess", api.JSON, `{`)
	w := httptest.NewRecorder()
	c.service.operations().ServeHTTP(w, httptest.NewRequest("GET", "/metrics", nil))
	text := w.Body.Bytes()
	for _, want := range []string{
		"# TYPE satline_requests_total counter\n",
		`satline_requests_total{endpoint="POST /v1/assess",status="200"} 1` + "\n",
		`satline_requests_total{endpoint="POST /v1/assess",status="400"} 1` + "\n",
		`satline_request_seconds_bucket{endpoint="POST /v1/assess",le="+Inf"} 2` + "\n",
		`satline_request_seconds_count{endpoint="POST /v1/assess"} 2` + "\n",
		"satline_requests_under_way 0\n", "satline_batch_lines_total{result=\"problem\"} 0\n",
	} {
		if !strings.Contains(string(text), want) {
			t.Errorf("no %q in\n%s", want, text)
		}
	}
	for line := range strings.Lines(string(text)) {
		if !metricLine.MatchString(line) {
			t.Errorf("not Prometheus text: %q", line)
		}
	}
}

// A request goes by one name in its answer and in the log: the one that it came
// with, where that is fit for a log, or a new one.
func TestRequestsAreNamed(t *testing.T) {
	var lines strings.Builder
	s := newService(slog.New(slog.NewJSONHandler(&lines, nil)), usual())
	names := map[string]bool{}
	for _, given := range []string{"gate-1.7_a", "", "", "two words", strings.Repeat("x", 65),
		"a\"b"} {
		r := httptest.NewRequest("GET", "/v1/refrigerants/R-32", nil)
		if given != "" {
			r.Header.Set("X-Request-Id", given)
		}
		w := httptest.NewRecorder()
		lines.Reset()
		s.ServeHTTP(w, r)
		name := w.Header().Get("X-Request-Id")
		if kept := name == given; kept != (given == "gate-1.7_a") || name == "" || names[name] {
			t.Errorf("%q is answered as %q", given, name)
		}
		names[name] = true
		if !strings.Contains(lines.String(), `"id":"`+name+`"`) {
			t.Errorf("%q is not in the log: %s", name, lines.String())
		}
	}
}

// A failure of ours ends the request at hand and nothing else.
func TestPanicIsContained(t *testing.T) {
	s := quietService(t)
	s.serve(
		"GET /fails", func(http.ResponseWriter, *http.Request) *api.Problem { panic("invented") },
	)
	w := httptest.NewRecorder()
	s.ServeHTTP(w, httptest.NewRequest("GET", "/fails", nil))
	if w.Code != http.StatusInternalServerError || strings.Contains(w.Body.String(), "invented") {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

func TestBusy(t *testing.T) {
	set := usual()
	set.workers = 1
	s := newService(slog.New(slog.DiscardHandler), set)
	s.places <- struct{}{}
	ctx, cancel := contextThatEnds()
	defer cancel()
	w := httptest.NewRecorder()
	r := httptest.NewRequest("POST", "/v1/air",
		strings.NewReader(`{"dryBulb": "75 °F", "wetBulb": "62 °F"}`)).
		WithContext(ctx)
	r.Header.Set("Content-Type", api.JSON)
	s.ServeHTTP(w, r)
	if w.Code != http.StatusServiceUnavailable || w.Header().Get("Retry-After") == "" {
		t.Errorf("%d %s", w.Code, w.Body)
	}
}

// A visit may have the decimal comma of its language, alone and in a batch, though the
// description has none: programs write points.
func TestDecimalComma(t *testing.T) {
	s := quietService(t)
	const visit = `{"language": "es", "equipment": {"refrigerant": "R-410A", "metering": "TXV"},` +
		`"readings": {"suctionPressure": "8,25 barg"}}`
	for path, media := range map[string]string{
		"/v1/assess": api.JSON, "/v1/assess/batch": api.NDJSON,
	} {
		w := httptest.NewRecorder()
		r := httptest.NewRequest("POST", path, strings.NewReader(visit))
		r.Header.Set("Content-Type", media)
		s.ServeHTTP(w, r)
		if w.Code != http.StatusOK || strings.Contains(w.Body.String(), "/problems/") {
			t.Errorf("%s: %d %s", path, w.Code, w.Body)
		}
	}
}

// From a request to its answer, as it is and packed.
func BenchmarkServe(b *testing.B) {
	s := newService(slog.New(slog.DiscardHandler), usual())
	for _, scope := range []string{"verdict", "whole"} {
		body := `{"scope": "` + scope + `",` + api.ExampleVisit[1:]
		for _, coding := range []string{"identity", "gzip"} {
			b.Run(scope+"/"+coding, func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					w := httptest.NewRecorder()
					r := httptest.NewRequest("POST", "/v1/assess", strings.NewReader(body))
					r.Header.Set("Content-Type", api.JSON)
					r.Header.Set("Accept-Encoding", coding)
					s.ServeHTTP(w, r)
					if w.Code != http.StatusOK {
						b.Fatal(w.Code, w.Body)
					}
				}
			})
		}
	}
}

// A client that reads only after it has sent everything hears what is wrong; one that asks
// first is told before it sends anything.
func TestTooLargeIsHeard(t *testing.T) {
	c := newClient(t)
	for expects, body := range map[string]string{
		"": strings.Repeat(" ", 6<<20), "Expect: 100-continue\r\n": "",
	} {
		conn, err := net.Dial("tcp", c.server.Listener.Addr().String())
		if err != nil {
			t.Fatal(err)
		}
		defer conn.Close()
		head := "POST /v1/air HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n" +
			expects + "Content-Length: 6291456\r\n\r\n"
		if _, err := io.WriteString(conn, head+body); err != nil {
			t.Fatal(err)
		}
		resp, err := http.ReadResponse(bufio.NewReader(conn), nil)
		if err != nil {
			t.Fatal(err)
		}
		resp.Body.Close()
		if resp.StatusCode != http.StatusRequestEntityTooLarge {
			t.Errorf("%q: %s", expects, resp.Status)
		}
	}
}

// So does one whose batch has a line without an end: what was answered before it is not lost.
func TestEndlessLineIsHeard(t *testing.T) {
	_, _, address := start(t, 8, func(set *settings) { set.lineTime = 10 * time.Second })
	conn, err := net.Dial("tcp", address)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	body := strings.ReplaceAll(api.ExampleVisit, "\n", " ") + "\n" + strings.Repeat("x", 2*maxLine)
	if _, err := fmt.Fprintf(conn, "POST /v1/assess/batch HTTP/1.1\r\nHost: localhost\r\n"+
		"Content-Type: application/x-ndjson\r\nContent-Length: %d\r\n\r\n%s", len(body), body,
	); err != nil {
		t.Fatal(err)
	}
	resp, err := http.ReadResponse(bufio.NewReader(conn), nil)
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(resp.Body)
	lines := strings.Split(string(text), "\n")
	if err != nil || len(lines) != 3 || !strings.HasPrefix(lines[0], `{"line":1,"assessment"`) ||
		!strings.HasPrefix(lines[1], `{"line":2,"problem":{"type":"/problems/too-large"`) {
		t.Errorf("%v %.300q", err, lines)
	}
}

// A visit is refused with every field that has to be mended, alone and in a batch.
func TestEveryFieldToMendIsNamed(t *testing.T) {
	c := newClient(t)
	want := []string{"equipment.refrigerant", "site.elevation", "readings.liquidLine"}
	for _, visit := range []string{
		`{"equipment": {"refrigerant": "R-9"}, "site": {"elevation": "9000 m"}, ` +
			`"readings": {"liquidLine": "900 °C", "suctionLine": "60 °F"}}`,
		`{"equipment": {"refrigerant": 9}, "site": {"elevation": "9000"}, ` +
			`"readings": {"liquidLine": "900 °", "suctionLine": "60 °F"}}`,
	} {
		_, alone := c.do("POST", "/v1/assess", api.JSON, visit)
		_, line := c.do("POST", "/v1/assess/batch", api.NDJSON, visit+"\n")
		var result struct{ Problem api.Problem }
		if err := json.Unmarshal(line, &result); err != nil {
			t.Fatal(err)
		}
		var p api.Problem
		if err := json.Unmarshal(alone, &p); err != nil {
			t.Fatal(err)
		}
		for name, p := range map[string]api.Problem{"alone": p, "in a batch": result.Problem} {
			fields := []string{p.Field}
			for _, x := range p.Also {
				fields = append(fields, x.Field)
			}
			if !slices.Equal(fields, want) {
				t.Errorf("%s: %v, want %v", name, fields, want)
			}
		}
	}
}
