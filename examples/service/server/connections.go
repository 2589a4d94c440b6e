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
	// What the system holds of answers, by itself up to megabytes, is what a client that reads
	// slowly has not got when the service stops.
	if tcp, ok := c.(*net.TCPConn); ok {
		tcp.SetWriteBuffer(heldBytes)
	}
	return &placed{Conn: c, leave: sync.OnceFunc(func() { out(); <-l.places })}, nil
}

// heldBytes are enough for 1 MB/s to a client that is 100 ms away.
const heldBytes = 128 << 10

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
	rest  atomic.Int64 // how long its client may still send once it is answered
}

// takeRest has the connection of a request take what still comes of it once it is answered, while
// its client reads: one that is closed on what was not read takes with it what its client has not
// read yet. That nothing comes for a while does not say that nothing will, so it is the client
// that ends it, or the time.
func takeRest(r *http.Request, most time.Duration) {
	if c, ok := r.Context().Value(connection{}).(*placed); ok {
		c.rest.Store(int64(most))
	}
}

func (c *placed) Close() error {
	most := time.Duration(c.rest.Swap(0))
	if half, ok := c.Conn.(*net.TCPConn); ok && most > 0 && half.CloseWrite() == nil {
		c.SetReadDeadline(time.Now().Add(most))
		io.Copy(io.Discard, c.Conn)
	}
	err := c.Conn.Close()
	c.leave()
	return err
}
