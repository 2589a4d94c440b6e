package main

import (
	"net"
	"net/http"
	"sync"
	"time"
)

// limitConnections lets at most n connections be served. The next waits until
// one closes, and to that end the one that has been idle longest is closed; the
// rest wait in the backlog of the system.
func limitConnections(l net.Listener, n int) *limited {
	return &limited{Listener: l, places: make(chan struct{}, max(1, n)), closed: make(chan struct{}), idle: map[net.Conn]time.Time{}}
}

type limited struct {
	net.Listener
	places chan struct{}
	closed chan struct{}
	once   sync.Once

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

func (l *limited) Close() error {
	l.once.Do(func() { close(l.closed) })
	return l.Listener.Close()
}

type placed struct {
	net.Conn
	leave func()
}

func (c *placed) Close() error {
	err := c.Conn.Close()
	c.leave()
	return err
}
