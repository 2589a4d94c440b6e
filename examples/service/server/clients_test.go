package server

import (
	"bufio"
	"context"
	"encoding/json"
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"regexp"
	"strings"
	"testing"
	"time"

	"github.com/satline/satline/examples/service/api"
)

var metricLine = regexp.MustCompile(
	`^(# (HELP|TYPE) [a-z_]+ .+|[a-z_]+(\{([a-z]+="[^"]*",?)+\})? [0-9.e+-]+)\n$`,
)

func contextThatEnds() (context.Context, context.CancelFunc) {
	return context.WithTimeout(context.Background(), 20*time.Millisecond)
}

// start serves with short time-outs on a loopback address.
func start(
	t *testing.T, connections int, change ...func(*settings),
) (*service, *http.Server, string) {
	t.Helper()
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	log := slog.New(slog.DiscardHandler)
	set := usual()
	set.workers, set.quiet, set.connections = 2, true, connections
	set.lineTime = 300 * time.Millisecond
	for _, f := range change {
		f(&set)
	}
	s := newService(log, set)
	server := newServer(s, log)
	server.ReadHeaderTimeout, server.ReadTimeout = 2*time.Second, time.Second
	go limitConnections(listener, set).serve(server)
	t.Cleanup(func() { server.Close() })
	return s, server, listener.Addr().String()
}

// Clients that send slowly, stop half-way or send no HTTP are dropped in time,
// and others are served meanwhile.
func TestSlowAndBrokenClients(t *testing.T) {
	_, _, address := start(t, 64)
	head := "POST /v1/assess HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
	var open []net.Conn
	for _, sent := range []string{
		"", "POST /v1/assess HTTP/1.1\r\nHost: local",
		head + "Content-Length: 1000\r\n\r\n{\"equip",
		head + "Transfer-Encoding: chunked\r\n\r\n5\r\n{\"equ",
		head + "Transfer-Encoding: chunked\r\n\r\nzz\r\n",
		head + "Content-Length: 99999999\r\n\r\n{", head + "Content-Length: -1\r\n\r\n{",
		"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03", "GET / HTTP/9.9\r\n\r\n",
		"GET /" + strings.Repeat("x", 64<<10) + " HTTP/1.1\r\n\r\n",
		"GET /problems/path HTTP/1.1\r\nHost: localhost\r\nX: " + strings.Repeat("y", 64<<10) +
			"\r\n\r\n",
	} {
		for range 4 {
			c, err := net.Dial("tcp", address)
			if err != nil {
				t.Fatal(err)
			}
			defer c.Close()
			io.WriteString(c, sent)
			open = append(open, c)
		}
	}
	resp, err := http.Post(
		"http://"+address+"/v1/assess", api.JSON, strings.NewReader(api.ExampleVisit),
	)
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	if resp.StatusCode != http.StatusOK {
		t.Errorf("an honest client got %d among broken ones", resp.StatusCode)
	}
	for i, c := range open {
		c.SetReadDeadline(time.Now().Add(5 * time.Second))
		if _, err := io.Copy(io.Discard, c); err != nil &&
			strings.Contains(err.Error(), "timeout") {
			t.Errorf("client %d is still connected after 5 s", i)
		}
	}
}

// A request whose time is up is told so.
func TestSlowBody(t *testing.T) {
	_, _, address := start(t, 4)
	for _, q := range []struct{ head, want string }{
		{"POST /v1/assess HTTP/1.1\r\nHost: localhost\r\nContent-Type: " +
			"application/json\r\nContent-Length: 1000\r\n\r\n{", `"status":408`},
		{"POST /v1/assess/batch HTTP/1.1\r\nHost: localhost\r\nContent-Type: " +
			"application/x-ndjson\r\nContent-Length: 1000\r\n\r\n{",
			`{"line":1,"problem":{"type":"/problems/timeout"`},
	} {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		io.WriteString(c, q.head)
		c.SetReadDeadline(time.Now().Add(5 * time.Second))
		if answer, err := io.ReadAll(c); err != nil || !strings.Contains(string(answer), q.want) {
			t.Errorf("%v %s", err, answer)
		}
	}
}

// Connections beyond the limit wait and are then served.
func TestConnectionLimit(t *testing.T) {
	_, _, address := start(t, 2)
	var idle []net.Conn
	for range 2 {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		idle = append(idle, c)
	}
	done := make(chan error, 1)
	go func() {
		resp, err := http.Get("http://" + address + "/problems/path")
		if err == nil {
			resp.Body.Close()
		}
		done <- err
	}()
	for _, c := range idle {
		c.Close()
	}
	select {
	case err := <-done:
		if err != nil {
			t.Error(err)
		}
	case <-time.After(5 * time.Second):
		t.Error("a place that came free was not given on")
	}
}

// Connections that are idle between requests keep nobody out.
func TestIdleConnectionsMakeRoom(t *testing.T) {
	_, _, address := start(t, 2)
	for i := range 8 {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		c.SetDeadline(time.Now().Add(5 * time.Second))
		io.WriteString(c, "GET /problems/path HTTP/1.1\r\nHost: localhost\r\n\r\n")
		if answer, err := bufio.NewReader(c).ReadString('\n'); err != nil ||
			!strings.Contains(answer, "200 OK") {
			t.Fatalf("connection %d: %q %v", i+1, answer, err)
		}
	}
}

// A client that takes no results is dropped, and does not hold up others.
func TestClientThatStopsReading(t *testing.T) {
	s, _, address := start(t, 8)
	c, err := net.Dial("tcp", address)
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	if err := c.(*net.TCPConn).SetReadBuffer(1 << 10); err != nil { // it is full the sooner
		t.Fatal(err)
	}
	io.WriteString(
		c,
		"POST /v1/assess/batch HTTP/1.1\r\nHost: localhost\r\nContent-Type: "+
			"application/x-ndjson\r\nContent-Length: 1000000000\r\n\r\n",
	)
	visit := strings.ReplaceAll(`{"scope": "verdict",`+api.ExampleVisit[1:], "\n", " ") + "\n"
	dropped := make(chan struct{})
	go func() {
		defer close(dropped)
		for {
			if _, err := io.WriteString(c, visit); err != nil {
				return
			}
		}
	}()
	select {
	case <-dropped:
	case <-time.After(time.Minute): // results have to fill what the system holds of them
		t.Fatal("after a minute it is still served")
	}
	waitFor(t, "its request ended", func() bool { return s.metrics.underWay.Load() == 0 })
	resp, err := http.Post(
		"http://"+address+"/v1/assess", api.JSON, strings.NewReader(api.ExampleVisit),
	)
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
}

// A batch under way ends between two lines when the service stops, and says
// from which line on it has to be sent again.
func TestBatchIsToldToStop(t *testing.T) {
	s, server, address := start(t, 8, func(set *settings) { set.lineTime = 10 * time.Second })
	body, send := io.Pipe()
	defer send.Close()
	r, err := http.NewRequest("POST", "http://"+address+"/v1/assess/batch", body)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", api.NDJSON)
	// The half of the second line comes with the first, whose result does not
	// wait for it.
	go io.WriteString(send, strings.ReplaceAll(api.ExampleVisit, "\n", " ")+"\n{\"half\": ")
	resp, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer resp.Body.Close()
	results := bufio.NewReader(resp.Body)
	if text, err := results.ReadString('\n'); err != nil ||
		!strings.HasPrefix(text, `{"line":1,"assessment"`) {
		t.Fatalf("%v %.100s", err, text)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 5*time.Second)
	defer cancel()
	stopped := make(chan error, 1)
	go func() {
		s.stop()
		stopped <- server.Shutdown(ctx)
	}()
	if text, err := results.ReadString('\n'); err != nil ||
		!strings.HasPrefix(text, `{"line":2,"problem":{"type":"/problems/stopping"`) {
		t.Errorf("%v %.100s", err, text)
	}
	if rest, err := io.ReadAll(results); err != nil || len(rest) != 0 {
		t.Errorf("after the end: %v %.100s", err, rest)
	}
	send.Close()
	if err := <-stopped; err != nil {
		t.Errorf("stopped with %v", err)
	}
}

// Results of a batch come while the client is still sending.
func TestBatchIsStreamed(t *testing.T) {
	_, _, address := start(t, 8, func(set *settings) { set.lineTime = 10 * time.Second })
	body, send := io.Pipe()
	r, err := http.NewRequest("POST", "http://"+address+"/v1/assess/batch", body)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", api.NDJSON)
	visit := strings.ReplaceAll(api.ExampleVisit, "\n", " ") + "\n"
	go io.WriteString(send, visit)
	resp, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer resp.Body.Close()
	results := bufio.NewReader(resp.Body)
	for n := 1; n <= 3; n++ {
		text, err := results.ReadString('\n')
		if err != nil || !strings.HasPrefix(text, fmt.Sprintf(`{"line":%d,"assessment"`, n)) {
			t.Fatalf("line %d: %v %.100s", n, err, text)
		}
		if n < 3 {
			if _, err := io.WriteString(send, visit); err != nil {
				t.Fatal(err)
			}
		}
	}
	send.Close()
	if rest, err := io.ReadAll(results); err != nil || len(rest) != 0 {
		t.Errorf("after the end: %v %.100s", err, rest)
	}
}

// A batch that is refused hears so before it has sent its lines, which it may not do before.
func TestRefusedBatchIsToldAtOnce(t *testing.T) {
	address, _, _ := running(t, nil)
	body, send := io.Pipe()
	defer send.Close()
	go io.WriteString(send, "{}\n")
	client := http.Client{Timeout: 10 * time.Second} // half of what a request has to arrive
	resp, err := client.Post("http://"+address+"/v1/assess/batch", "text/plain", body)
	if err != nil {
		t.Fatal(err)
	}
	resp.Body.Close()
	if resp.StatusCode != http.StatusUnsupportedMediaType {
		t.Error(resp.Status)
	}
}

// Told to stop, the service says that it is not ready, finishes what is under
// way, and ends.
func TestGracefulStop(t *testing.T) {
	address, operations, stop := running(t, environment{"SATLINE_DRAIN": "200ms"})
	body, send := io.Pipe()
	r, err := http.NewRequest("POST", "http://"+address+"/v1/assess", body)
	if err != nil {
		t.Fatal(err)
	}
	r.Header.Set("Content-Type", api.JSON)
	answered := make(chan string, 1)
	go func() {
		resp, err := http.DefaultClient.Do(r)
		if err != nil {
			answered <- err.Error()
			return
		}
		defer resp.Body.Close()
		answered <- resp.Status
	}()
	io.WriteString(send, api.ExampleVisit[:40])
	late, err := net.Dial("tcp", address)
	if err != nil {
		t.Fatal(err)
	}
	defer late.Close()
	ended := stop()
	waitFor(t, "readiness withdrawn", func() bool {
		resp, err := http.Get("http://" + operations + "/readyz")
		if err != nil {
			return false
		}
		defer resp.Body.Close()
		return resp.StatusCode == http.StatusServiceUnavailable
	})
	if resp, err := http.Get("http://" + address + "/problems/path"); err != nil || !resp.Close {
		t.Errorf("a client is not told to take its next request elsewhere: %v", err)
	}
	waitFor(t, "no more connections", func() bool {
		c, err := net.Dial("tcp", address)
		if err == nil {
			c.Close()
		}
		return err != nil
	})
	late.SetDeadline(time.Now().Add(5 * time.Second))
	io.WriteString(late, "GET /problems/path HTTP/1.1\r\nHost: localhost\r\n\r\n")
	if got, err := bufio.NewReader(late).ReadString('\n'); err != nil ||
		!strings.Contains(got, "200 OK") {
		t.Errorf("a request on a connection that was taken before: %q %v", got, err)
	}
	io.WriteString(send, api.ExampleVisit[40:])
	send.Close()
	if got := <-answered; got != "200 OK" {
		t.Errorf("the request under way: %s", got)
	}
	if err := <-ended; err != nil {
		t.Errorf("stopped with %v", err)
	}
}

// running starts the service as a program does, and says where it listens. What stops it hands
// back what tells of its end.
func running(t *testing.T, set environment) (
	address, operations string, stop func() (ended <-chan error),
) {
	t.Helper()
	ctx, cancel := context.WithCancel(context.Background())
	t.Cleanup(cancel)
	out, in := io.Pipe()
	ended := make(chan error, 1)
	go func() {
		ended <- Run(ctx, Options{
			Args:   []string{"-listen", "127.0.0.1:0", "-operations", "127.0.0.1:0"},
			Getenv: set.get,
			Log:    slog.New(slog.NewJSONHandler(in, nil)),
		})
		in.Close()
	}()
	lines := bufio.NewReader(out)
	first, err := lines.ReadString('\n')
	if err != nil {
		t.Fatal(err)
	}
	var listening struct{ Address, Operations string }
	if err := json.Unmarshal([]byte(first), &listening); err != nil {
		t.Fatal(err)
	}
	go io.Copy(io.Discard, lines)
	return listening.Address, listening.Operations, func() <-chan error {
		cancel()
		return ended
	}
}

type environment map[string]string

func (e environment) get(name string) string { return e[name] }

func waitFor(t *testing.T, what string, is func() bool) {
	t.Helper()
	for began := time.Now(); time.Since(began) < 30*time.Second; time.Sleep(time.Millisecond) {
		if is() {
			return
		}
	}
	t.Errorf("not within its time: %s", what)
}
