package server

import (
	"fmt"
	"io"
	"log/slog"
	"net"
	"testing"
	"time"

	"github.com/satline/satline/examples/service/api"
)

// A client that asks and asks and never reads is dropped when the time to be answered is up.
func TestAClientThatNeverReadsIsDropped(t *testing.T) {
	listener, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	server := newServer(quietService(t), slog.New(slog.DiscardHandler))
	server.WriteTimeout = 200 * time.Millisecond
	go limitConnections(listener, usual()).serve(server)
	t.Cleanup(func() { server.Close() })
	c, err := net.Dial("tcp", listener.Addr().String())
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
