package main

import (
	"context"
	"net"
	"net/http"
	"sync"
	"time"
)

// limitConnections lets at most n connections be served. The next waits until
// one closes, and to that end the one that has been idle longest is closed; the
// rest wait in the backlog of the system.
func limitConnections(l net.Listener, n int) *limited {
	limited := &limited{
		Listener: l,
		places:   make(chan struct{}, max(1, n)),
		closed:   make(chan struct{}),
		idle:     map[net.Conn]time.Time{},
	}
	limited.close = sync.OnceValue(func() error {
		close(limited.closed)
		return l.Close()
	})
	return limited
}

type limited struct {
	net.Listener
	places chan struct{}
	closed chan struct{}
	close  func() error

	mu      sync.Mutex
	idle    map[net.Conn]time.Time // between two requests, and since when
	waiting bool                   // whether a connection has no place yet
}

func (l *limited) Accept() (net.Conn, error) {
	c, err := l.Listener.Accept()
	if err != nil {
		return nil, err
	}
	select {
	case l.places <- struct{}{}:
	default:
		l.makeRoom()
		select {
		case l.places <- struct{}{}:
			l.mu.Lock()
			l.waiting = false
			l.mu.Unlock()
		case <-l.closed:
			c.Close()
			return nil, net.ErrClosed
		}
	}
	return &placed{Conn: c, leave: sync.OnceFunc(func() { <-l.places })}, nil
}

// makeRoom closes the connection that has been idle longest, or has the next
// one that becomes idle closed.
func (l *limited) makeRoom() {
	l.mu.Lock()
	defer l.mu.Unlock()
	var longest net.Conn
	for c, since := range l.idle {
		if longest == nil || since.Before(l.idle[longest]) {
			longest = c
		}
	}
	if longest == nil {
		l.waiting = true
		return
	}
	delete(l.idle, longest)
	longest.Close()
}

// state is told by the server what becomes of a connection.
func (l *limited) state(c net.Conn, s http.ConnState) {
	l.mu.Lock()
	defer l.mu.Unlock()
	delete(l.idle, c)
	switch {
	case s != http.StateIdle:
	case l.waiting:
		l.waiting = false
		c.Close()
	default:
		l.idle[c] = time.Now()
	}
}

// finish takes no more connections and waits until those that there are have
// been answered. The server by itself drops one whose request it has not read
// yet when it is shut down.
func (l *limited) finish(ctx context.Context) {
	l.Close()
	every := time.NewTicker(5 * time.Millisecond)
	defer every.Stop()
	for {
		l.mu.Lock()
		answered := len(l.places) <= len(l.idle)
		l.mu.Unlock()
		if answered {
			return
		}
		select {
		case <-every.C:
		case <-ctx.Done():
			return
		}
	}
}

func (l *limited) Close() error { return l.close() }

type placed struct {
	net.Conn
	leave func()
}

func (c *placed) Close() error {
	err := c.Conn.Close()
	c.leave()
	return err
}
