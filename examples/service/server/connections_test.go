package server

import (
	"fmt"
	"io"
	"log/slog"
	"net"
	"net/http"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"github.com/satline/satline/examples/service/api"
)

// A counting listener counts the writes to all its connections.
type counting struct {
	net.Listener
	writes atomic.Int64
}

func (l *counting) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	return &counted{c, &l.writes}, err
}

type counted struct {
	net.Conn
	writes *atomic.Int64
}

func (c *counted) Write(b []byte) (int, error) {
	c.writes.Add(1)
	return c.Conn.Write(b)
}

func startCounting(t *testing.T, toBeAnswered time.Duration) *counting {
	t.Helper()
	inner, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	listener := &counting{Listener: inner}
	server := newServer(quietService(t), slog.New(slog.DiscardHandler))
	server.WriteTimeout = toBeAnswered
	limited := limitConnections(listener, usual())
	limited.of(server)
	go server.Serve(limited)
	t.Cleanup(func() { server.Close() })
	return listener
}

// An answer longer than the buffer of the server is sent with one write, one after the other
// on the same connection.
func TestAnAnswerIsOneWrite(t *testing.T) {
	listener := startCounting(t, time.Minute)
	client := &http.Client{
		Timeout: 10 * time.Second, Transport: &http.Transport{DisableCompression: true},
	}
	for n := range int64(3) {
		resp, err := client.Post("http://"+listener.Addr().String()+"/v1/assess", api.JSON,
			strings.NewReader(api.ExampleVisit))
		if err != nil {
			t.Fatal(err)
		}
		text, err := io.ReadAll(resp.Body)
		resp.Body.Close()
		if err != nil || resp.StatusCode != http.StatusOK || len(text) < 5000 ||
			int64(len(text)) != resp.ContentLength {
			t.Fatal(err, resp.Status, len(text), resp.ContentLength)
		}
		if got := listener.writes.Load(); got != n+1 {
			t.Errorf("%d writes of %d answers", got, n+1)
		}
	}
}

// A client that asks and asks and never reads is dropped when the time to be answered is up.
func TestAClientThatNeverReadsIsDropped(t *testing.T) {
	c, err := net.Dial("tcp", startCounting(t, 200*time.Millisecond).Addr().String())
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	ask := fmt.Sprintf("POST /v1/assess HTTP/1.1\r\nHost: localhost\r\n"+
		"Content-Type: application/json\r\nContent-Length: %d\r\n\r\n%s",
		len(api.ExampleVisit), api.ExampleVisit)
	c.SetDeadline(time.Now().Add(20 * time.Second))
	for err == nil {
		_, err = io.WriteString(c, ask)
	}
	if timeout, ok := err.(net.Error); ok && timeout.Timeout() {
		t.Error("it was not dropped in 20 s")
	}
}
