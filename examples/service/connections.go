package main

import (
	"net"
	"sync"
)

// limitConnections lets at most n connections be open; the next waits in the
// backlog of the system until one closes.
func limitConnections(l net.Listener, n int) net.Listener {
	return &limited{Listener: l, places: make(chan struct{}, max(1, n)), closed: make(chan struct{})}
}

type limited struct {
	net.Listener
	places chan struct{}
	closed chan struct{}
	once   sync.Once
}

func (l *limited) Accept() (net.Conn, error) {
	select {
	case l.places <- struct{}{}:
	case <-l.closed:
		return nil, net.ErrClosed
	}
	c, err := l.Listener.Accept()
	if err != nil {
		<-l.places
		return nil, err
	}
	return &placed{Conn: c, leave: sync.OnceFunc(func() { <-l.places })}, nil
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
