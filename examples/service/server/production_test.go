package server

import (
	"bufio"
	"bytes"
	"compress/gzip"
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"net/http/httptest"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline"
	"github.com/satline/satline/examples/service/api"
)

func TestSettings(t *testing.T) {
	for _, q := range []struct {
		args    []string
		env     environment
		problem string
	}{
		{nil, nil, ""}, {[]string{"-workers", "3"}, environment{"SATLINE_WORKERS": "many"}, ""},
		{nil, environment{"SATLINE_WORKERS": "3", "SATLINE_BATCH_TIME": "1m"}, ""},
		{nil, environment{"SATLINE_WORKERS": "many"}, "SATLINE_WORKERS"},
		{nil, environment{"SATLINE_WORKERS": "0"}, "-workers is 0"},
		{nil, environment{"SATLINE_LINE_TIME": "-1s"}, "-line-time is -1s"},
		{[]string{"8080"}, nil, `"8080" is no flag`},
		{[]string{"-quiet", "true"}, nil, `"true" is no flag`},
	} {
		set := usual()
		err := set.read(q.args, q.env.get)
		if (err == nil) != (q.problem == "") || err != nil &&
			!strings.Contains(err.Error(), q.problem) {
			t.Errorf("%v %v: %v, want %q", q.args, q.env, err, q.problem)
		}
		if err == nil && (len(q.args) > 0 || q.env != nil) && set.workers != 3 {
			t.Errorf("%v %v: %d workers", q.args, q.env, set.workers)
		}
	}
}

// slowBatch opens a batch that sends blank lines and nothing else, until it is ended.
func slowBatch(t *testing.T, address string) (ended chan struct{}) {
	t.Helper()
	c, err := net.Dial("tcp", address)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	io.WriteString(c, "POST /v1/assess/batch HTTP/1.1\r\nHost: localhost\r\n"+
		"Content-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n")
	ended = make(chan struct{})
	go func() {
		defer close(ended)
		io.Copy(io.Discard, c)
	}()
	go func() {
		for {
			if _, err := io.WriteString(c, "1\r\n\n\r\n"); err != nil {
				return
			}
			time.Sleep(20 * time.Millisecond)
		}
	}()
	return ended
}

// Eight batches of blank lines on all eight connections there are keep nobody from
// health, and end with their time.
func TestSlowBatchesStarveNobody(t *testing.T) {
	s, _, address := start(t, 8, func(set *settings) { set.lineTime = 3 * time.Second })
	operations := httptest.NewServer(s.operations())
	defer operations.Close()
	var slow []chan struct{}
	for range 8 {
		slow = append(slow, slowBatch(t, address))
	}
	waitFor(t, "eight batches under way", func() bool { return s.metrics.underWay.Load() == 8 })
	began := time.Now()
	resp, err := http.Get(operations.URL + "/healthz")
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	t.Logf("health answered within %v", time.Since(began))
	for i, ended := range slow {
		select {
		case <-ended:
		case <-time.After(30 * time.Second):
			t.Fatalf("batch %d goes on after 30 s of blank lines", i)
		}
	}
}

// A batch has its time, and all batches have their number.
func TestBatchesAreBounded(t *testing.T) {
	s, _, address := start(t, 8, func(set *settings) {
		set.batches, set.batchTime, set.lineTime = 1, 300*time.Millisecond, 10*time.Second
		set.grace = 2 * time.Second
	})
	ended := slowBatch(t, address)
	waitFor(t, "a batch under way", func() bool { return len(s.batches) == 1 })
	resp, err := http.Post("http://"+address+"/v1/assess/batch", api.NDJSON,
		strings.NewReader("\n"))
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	if resp.StatusCode != http.StatusServiceUnavailable || resp.Header.Get("Retry-After") == "" {
		t.Errorf("a second batch: %s", resp.Status)
	}
	select {
	case <-ended:
	case <-time.After(20 * time.Second): // its client goes on sending
		t.Error("a batch goes on after its time")
	}
}

// One client may have so many requests under way and no more; another is served.
func TestClientsHaveTheirShare(t *testing.T) {
	s, _, address := start(t, 8, func(set *settings) {
		set.clientRequests, set.clientHeader, set.lineTime = 1, "X-Client", 10*time.Second
	})
	slowBatch(t, address) // from its address, since it has no header
	waitFor(t, "a batch under way", func() bool { return s.metrics.underWay.Load() == 1 })
	for client, want := range map[string]int{"": 429, "192.0.2.7": 200} {
		r, err := http.NewRequest("GET", "http://"+address+"/problems/too-many", nil)
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("X-Client", client)
		resp, err := http.DefaultClient.Do(r)
		if err != nil {
			t.Fatal(err)
		}
		resp.Body.Close()
		if resp.StatusCode != want {
			t.Errorf("client %q: %d, want %d", client, resp.StatusCode, want)
		}
	}
	for address, want := range map[string]string{
		"192.0.2.7:80": "192.0.2.7", "[2001:db8:1:2:3::4]:80": "2001:db8:1:2::/64", "pipe": "pipe",
	} {
		if got := clientAt(address); got != want {
			t.Errorf("%s is client %s, want %s", address, got, want)
		}
	}
}

func TestConnectionsOfOneAddress(t *testing.T) {
	_, _, address := start(t, 8, func(set *settings) { set.clientConnections = 2 })
	open := 0
	for range 4 {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		c.SetDeadline(time.Now().Add(5 * time.Second))
		io.WriteString(c, "GET /problems/path HTTP/1.1\r\nHost: localhost\r\n\r\n")
		if _, err := bufio.NewReader(c).ReadString('\n'); err == nil {
			open++
		}
	}
	if open != 2 {
		t.Errorf("%d connections served, want 2", open)
	}
}

// A batch that is being sent when the service stops has a result for every line before
// the one that it is told to send again, however slowly its client reads, and though it
// sends on for longer than most would wait, with a pause or without.
func TestStoppedBatchLosesNothing(t *testing.T) {
	visit := strings.ReplaceAll(`{"scope": "verdict",`+api.ExampleVisit[1:], "\n", " ") + "\n"
	for name, pause := range map[string]time.Duration{"on": 0, "pausing": 500 * time.Millisecond} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			address, _, stop := running(t, environment{"SATLINE_GRACE": "40s"})
			c, err := net.Dial("tcp", address)
			if err != nil {
				t.Fatal(err)
			}
			defer c.Close()
			if err := c.(*net.TCPConn).SetReadBuffer(32 << 10); err != nil {
				t.Fatal(err)
			}
			stopping := make(chan struct{})
			go func() {
				const lines = 100_000
				told := stopping
				fmt.Fprintf(c, "POST /v1/assess/batch HTTP/1.1\r\nHost: localhost\r\n"+
					"Content-Type: application/x-ndjson\r\nContent-Length: %d\r\n\r\n",
					lines*len(visit))
				for range lines {
					if _, err := io.WriteString(c, visit); err != nil {
						return
					}
					select {
					case <-told:
						told = nil
						time.Sleep(pause)
					default:
					}
				}
			}()
			resp, err := http.ReadResponse(bufio.NewReader(c), nil)
			if err != nil {
				t.Fatal(err)
			}
			var ended <-chan error
			var since time.Time
			results := bufio.NewReader(resp.Body)
			for n := 1; ; n++ {
				text, err := results.ReadBytes('\n')
				var result struct {
					Line    int
					Problem *api.Problem
				}
				if err != nil || json.Unmarshal(text, &result) != nil || result.Line != n {
					t.Fatalf("result %d: %v %.80s", n, err, text)
				}
				if n == 20 {
					ended, since = stop(), time.Now()
					close(stopping)
				}
				if result.Problem != nil {
					if result.Problem.Type != "/problems/stopping" || n < 20 {
						t.Errorf("line %d: %+v", n, result.Problem)
					}
					t.Logf("told %v after the stop at line %d", time.Since(since), n)
					break
				}
				time.Sleep(200 * time.Millisecond)
			}
			c.Close()
			if err := <-ended; err != nil {
				t.Error(err)
			}
		})
	}
}

func TestOrigins(t *testing.T) {
	set := usual()
	set.origins = "https://pages.example, https://other.example"
	s := newService(slog.New(slog.DiscardHandler), set)
	for _, q := range []struct {
		method, origin, asks string
		status               int
		allowed              string
	}{
		{"GET", "https://pages.example", "", 200, "https://pages.example"},
		{"GET", "https://evil.example", "", 200, ""}, {"GET", "", "", 200, ""},
		{"OPTIONS", "https://other.example", "POST", 204, "https://other.example"},
		{"OPTIONS", "https://evil.example", "POST", 405, ""},
	} {
		r := httptest.NewRequest(q.method, "/v1/refrigerants", nil)
		r.Header.Set("Origin", q.origin)
		r.Header.Set("Access-Control-Request-Method", q.asks)
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		if got := w.Header().Get("Access-Control-Allow-Origin"); w.Code != q.status ||
			got != q.allowed || !strings.Contains(w.Header().Get("Vary"), "Origin") {
			t.Errorf("%+v: %d %q", q, w.Code, w.Header())
		}
	}
}

// The examples are those of W3C Trace Context, sections 3.2 and 3.2.4.
func TestTraceContext(t *testing.T) {
	const trace, parent = "4bf92f3577b34da6a3ce929d0e0e4736", "00f067aa0ba902b7"
	for header, kept := range map[string]bool{
		"00-" + trace + "-" + parent + "-01":       true,
		"cc-" + trace + "-" + parent + "-01-more":  true,
		"00-" + trace + "-" + parent + "-01-more":  false,
		"ff-" + trace + "-" + parent + "-01":       false,
		"00-" + trace[1:] + "-" + parent + "-01":   false,
		"00-" + trace + "-0000000000000000-01":     false,
		"00-" + strings.Repeat("0", 32) + "-1-01":  false,
		"00-" + strings.ToUpper(trace) + "-" + "x": false,
		"": false,
	} {
		got, from := traceOf(header)
		if (got == trace) != kept || (from == parent) != kept || len(got) != 32 {
			t.Errorf("%q: trace %s, parent %s", header, got, from)
		}
	}
}

func packed(t *testing.T, text string) *bytes.Buffer {
	t.Helper()
	var out bytes.Buffer
	z := gzip.NewWriter(&out)
	z.Write([]byte(text))
	if err := z.Close(); err != nil {
		t.Fatal(err)
	}
	return &out
}

func TestPacking(t *testing.T) {
	s := quietService(t)
	lines := strings.Repeat(strings.ReplaceAll(api.ExampleVisit, "\n", " ")+"\n", 3)
	for _, q := range []struct{ path, media, body, takes, want string }{
		{"/v1/assess", api.JSON, api.ExampleVisit, "", ""},
		{"/v1/assess", api.JSON, api.ExampleVisit, "br, gzip;q=0.5", "gzip"},
		{"/v1/assess", api.JSON, api.ExampleVisit, "*", "gzip"},
		{"/v1/assess", api.JSON, api.ExampleVisit, "gzip;q=0, *", ""},
		{"/v1/assess/batch", api.NDJSON, lines, "gzip", "gzip"},
		{"/v1/air", api.JSON, `{"dryBulb": "75 °F", "wetBulb": "62 °F"}`, "gzip", ""}, // too short
	} {
		r := httptest.NewRequest("POST", q.path, packed(t, q.body))
		r.Header.Set("Content-Type", q.media)
		r.Header.Set("Content-Encoding", "gzip")
		r.Header.Set("Accept-Encoding", q.takes)
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		if w.Code != 200 || w.Header().Get("Content-Encoding") != q.want ||
			!strings.Contains(w.Header().Get("Vary"), "Accept-Encoding") {
			t.Errorf("%s, taking %q: %d %q", q.path, q.takes, w.Code, w.Header())
			continue
		}
		var in io.Reader = w.Body
		if q.want != "" {
			z, err := gzip.NewReader(w.Body)
			if err != nil {
				t.Fatal(err)
			}
			in = z
		}
		text, err := io.ReadAll(in)
		if err != nil {
			t.Errorf("%s, taking %q: %v", q.path, q.takes, err)
		}
		for line := range bytes.Lines(text) {
			if !json.Valid(line) {
				t.Errorf("%s, taking %q: not JSON: %.80s", q.path, q.takes, line)
			}
		}
	}
}

// Lines of one header mean what one line with all of them does.
func TestHeadersOfManyLines(t *testing.T) {
	s := quietService(t)
	for _, q := range []struct {
		header string
		lines  []string
		body   *bytes.Buffer
		status int
		packs  string
	}{
		{"Accept-Encoding", []string{"br", "gzip"}, bytes.NewBufferString(api.ExampleVisit), 200,
			"gzip"},
		{"Content-Encoding", []string{"x-gzip"}, packed(t, api.ExampleVisit), 200, ""},
		{"Content-Encoding", []string{"gzip", "gzip"}, packed(t, api.ExampleVisit), 415, ""},
		{"Content-Encoding", []string{"identity", "gzip"}, packed(t, api.ExampleVisit), 415, ""},
		{"Content-Type", []string{"text/plain"}, bytes.NewBufferString(api.ExampleVisit), 415, ""},
	} {
		r := httptest.NewRequest("POST", "/v1/assess", q.body)
		r.Header.Set("Content-Type", api.JSON)
		for _, line := range q.lines {
			r.Header.Add(q.header, line)
		}
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		if got := w.Header().Get("Content-Encoding"); w.Code != q.status || got != q.packs {
			t.Errorf("%s %q: %d, %q", q.header, q.lines, w.Code, got)
		}
	}
}

// What is not packed as it says, or unpacks to more than is read, is a problem.
func TestBadPacking(t *testing.T) {
	c := newClient(t)
	for _, q := range []struct {
		path, media string
		body        *bytes.Buffer
		status      int
	}{
		{"/v1/assess", api.JSON, bytes.NewBufferString(api.ExampleVisit), 400},
		{"/v1/assess/batch", api.NDJSON, bytes.NewBufferString("{}\n"), 400},
		{"/v1/assess", api.JSON, packed(t, strings.Repeat(" ", 8<<20)), 413},
		{"/v1/assess/batch", api.NDJSON, packed(t, strings.Repeat(" ", 32<<20)), 200},
	} {
		r, err := http.NewRequest("POST", c.server.URL+q.path, q.body)
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", q.media)
		r.Header.Set("Content-Encoding", "gzip")
		resp, err := c.server.Client().Do(r)
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(resp.Body)
		resp.Body.Close()
		if err != nil || resp.StatusCode != q.status {
			t.Errorf("%s: %d, %v, want %d: %.200s", q.path, resp.StatusCode, err, q.status, text)
		}
		if q.status == 200 && !bytes.Contains(text, []byte("/problems/too-large")) {
			t.Errorf("%s: %.200s", q.path, text)
		}
	}
}

func TestConstantsAreNotSentTwice(t *testing.T) {
	s := quietService(t)
	get := func(path, known string) *httptest.ResponseRecorder {
		r := httptest.NewRequest("GET", path, nil)
		r.Header.Set("If-None-Match", known)
		w := httptest.NewRecorder()
		s.ServeHTTP(w, r)
		return w
	}
	tags := map[string]string{}
	for _, path := range []string{"/openapi.json", "/v1/refrigerants", "/v1/refrigerants/R-32",
		"/v1/refrigerants/R-32?units=IP", "/problems/input"} {
		first := get(path, `"other"`)
		tag := first.Header().Get("ETag")
		if first.Code != 200 || tag == "" || tags[tag] != "" {
			t.Errorf("%s: %d, ETag %s, which is that of %q", path, first.Code, tag, tags[tag])
		}
		tags[tag] = path
		again := get(path, `"other", `+tag)
		if again.Code != 304 || again.Body.Len() != 0 ||
			again.Header().Get("Vary") != first.Header().Get("Vary") {
			t.Errorf("%s again: %d, %q, %d bytes", path, again.Code, again.Header(),
				again.Body.Len())
		}
	}
}

func TestUnitsOfAnswers(t *testing.T) {
	c := newClient(t)
	inSI := strings.Replace(api.ExampleVisit, `"units": "IP"`, `"units": "SI"`, 1)
	for _, q := range []struct{ method, path, body, want string }{
		{"POST", "/v1/air", `{"dryBulb": "75 °F", "wetBulb": "62 °F"}`, `"dryBulb":"75.0 °F"`},
		{"POST", "/v1/air", `{"dryBulb": "25 °C", "wetBulb": "17 °C"}`, `"dryBulb":"25.0 °C"`},
		{"POST", "/v1/air?units=SI", `{"dryBulb": "75 °F", "wetBulb": "62 °F"}`,
			`"dryBulb":"23.9 °C"`},
		{"POST", "/v1/air?units=exact", `{"dryBulb": "75 °F", "wetBulb": "62 °F"}`,
			`"dryBulb":"23.888888888`},
		{"GET", "/v1/refrigerants/R-32?units=IP", "", `"criticalTemperature":"172.6 °F"`},
		{"GET", "/v1/refrigerants/R-32", "", `"criticalTemperature":"78.1 °C"`},
		{"POST", "/v1/charge/target", `{"method": "subcooling", "label": "9 °F ± 1.234 °F"}`,
			`"9.0 °F ± 1.2 °F"`},
		{"POST", "/v1/assess", api.ExampleVisit, ` °F ± `}, {"POST", "/v1/assess", inSI, ` K ± `},
		{"POST", "/v1/assess?units=SI", api.ExampleVisit, ` K ± `},
	} {
		r, err := http.NewRequest(q.method, c.server.URL+q.path, strings.NewReader(q.body))
		if err != nil {
			t.Fatal(err)
		}
		r.Header.Set("Content-Type", api.JSON)
		resp, err := c.server.Client().Do(r)
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(resp.Body)
		resp.Body.Close()
		if err != nil || !strings.Contains(string(text), q.want) {
			t.Errorf("%s %s: no %s in %.600s", q.path, q.body, q.want, text)
		}
		if strings.Contains(q.path, "assess") {
			other := " psi"
			if q.want == ` °F ± ` {
				other = " kPa"
			}
			var a satline.Assessment
			if strings.Contains(string(text), other) || json.Unmarshal(text, &a) != nil {
				t.Errorf("%s: %s among %.3000s", q.path, other, text)
			}
		}
	}
	for _, query := range []string{"units=metric", "unit=SI", "units=SI&units=SI", "units=%zz",
		"units=SI;x=1"} {
		if status, answer := c.do("GET", "/v1/refrigerants?"+query, "", ""); status != 422 {
			t.Errorf("%s: %d %s", query, status, answer)
		}
	}
}
