package server

import (
	"context"
	"io"
	"net"
	"net/http"
	"sync"
	"sync/atomic"
	"time"
)

// limitConnections lets so many connections be served as are set. The next waits until
// one closes, and to that end the one that has been idle longest is closed; the
// rest wait in the backlog of the system. One address has only its share of them, where
// an address is a client.
func limitConnections(l net.Listener, set settings) *limited {
	each := set.clientConnections
	if set.clientHeader != "" {
		each = set.connections
	}
	limited := &limited{
		Listener: l,
		clients:  newClients(each),
		places:   make(chan struct{}, set.connections),
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
	clients *clients
	places  chan struct{}
	closed  chan struct{}
	close   func() error

	mu      sync.Mutex
	idle    map[net.Conn]time.Time // between two requests, and since when
	waiting bool                   // whether a connection has no place yet
}

func (l *limited) Accept() (net.Conn, error) {
	c, out, err := l.next()
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
			out()
			c.Close()
			return nil, net.ErrClosed
		}
	}
	return &placed{Conn: c, leave: sync.OnceFunc(func() { out(); <-l.places })}, nil
}

// next is the next connection of a client that has not its share of them already.
func (l *limited) next() (c net.Conn, out func(), err error) {
	for {
		if c, err = l.Listener.Accept(); err != nil {
			return nil, nil, err
		}
		client := clientAt(c.RemoteAddr().String())
		if l.clients.enter(client) {
			return c, func() { l.clients.leave(client) }, nil
		}
		c.Close()
	}
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

// serve has a server serve the connections.
func (l *limited) serve(server *http.Server) error {
	server.ConnState = l.state
	server.ConnContext = func(ctx context.Context, c net.Conn) context.Context {
		return context.WithValue(ctx, connection{}, c)
	}
	return server.Serve(l)
}

// connection is the key by which a request has its own.
type connection struct{}

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

// A placed connection has one of the places.
type placed struct {
	net.Conn
	leave func()
	early atomic.Bool // its last request was answered before it had come whole
}

// linger is how long a connection goes on taking what still comes of a request that was answered
// early.
const linger = 5 * time.Second

// takeRest has the connection of a request take what still comes of it once it is answered, while
// its client reads: one that is closed on what was not read takes with it what its client has not
// read yet. That nothing comes for a while does not say that nothing will, so it is the client
// that ends it, or the time.
func takeRest(r *http.Request) {
	if c, ok := r.Context().Value(connection{}).(*placed); ok {
		c.early.Store(true)
	}
}

func (c *placed) Close() error {
	if half, ok := c.Conn.(*net.TCPConn); ok && c.early.Swap(false) && half.CloseWrite() == nil {
		c.SetReadDeadline(time.Now().Add(linger))
		io.Copy(io.Discard, c.Conn)
	}
	err := c.Conn.Close()
	c.leave()
	return err
}
