package main

import (
	"io"
	"net"
	"net/http"
	"strings"
	"sync/atomic"
	"time"
)

// hangOn keeps n batches open that send a blank line every half second and nothing else,
// each anew when the service has ended it, until it is told to stop.
func (l load) hangOn(n int) (stop func()) {
	var stopped atomic.Bool
	for range n {
		go func() {
			for !stopped.Load() {
				l.slowBatch(&stopped)
				time.Sleep(100 * time.Millisecond)
			}
		}()
	}
	return func() { stopped.Store(true) }
}

func (l load) slowBatch(stopped *atomic.Bool) {
	c, err := net.Dial("tcp", strings.TrimPrefix(l.base, "http://"))
	if err != nil {
		return
	}
	defer c.Close()
	_, err = io.WriteString(c, "POST /v1/assess/batch HTTP/1.1\r\nHost: localhost\r\n"+
		"Content-Type: application/x-ndjson\r\nTransfer-Encoding: chunked\r\n\r\n")
	for err == nil && !stopped.Load() {
		_, err = io.WriteString(c, "1\r\n\n\r\n")
		time.Sleep(500 * time.Millisecond)
	}
}

// watchHealth asks for health ten times a second, and returns the longest that it took.
func (l load) watchHealth() (longest func() time.Duration) {
	done, end := make(chan time.Duration), make(chan struct{})
	go func() {
		var most time.Duration
		for tick := time.Tick(100 * time.Millisecond); l.operations != ""; {
			began := time.Now()
			if resp, err := l.client.Get(l.operations + "/healthz"); err == nil &&
				resp.StatusCode == http.StatusOK {
				io.Copy(io.Discard, resp.Body)
				resp.Body.Close()
				most = max(most, time.Since(began))
			} else {
				most = max(most, l.client.Timeout)
			}
			select {
			case <-tick:
			case <-end:
				done <- most
				return
			}
		}
		<-end
		done <- 0
	}()
	return func() time.Duration {
		close(end)
		return <-done
	}
}
