package server

import (
	"cmp"
	"net"
	"net/http"
	"net/netip"
	"sync"
)

// clients count what each client has under way.
type clients struct {
	most     int
	mu       sync.Mutex
	underWay map[string]int
}

func newClients(most int) *clients { return &clients{most: most, underWay: map[string]int{}} }

// enter counts one more of a client, to leave again; not where it has the most there may be.
func (c *clients) enter(client string) bool {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.underWay[client] >= c.most {
		return false
	}
	c.underWay[client]++
	return true
}

func (c *clients) leave(client string) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.underWay[client]--; c.underWay[client] == 0 {
		delete(c.underWay, client)
	}
}

// client is who asks: whom the proxy names in a header, or the address.
func (s *service) client(r *http.Request) string {
	if s.set.clientHeader == "" {
		return clientAt(r.RemoteAddr)
	}
	return cmp.Or(r.Header.Get(s.set.clientHeader), clientAt(r.RemoteAddr))
}

// clientAt is the address without its port; of IPv6 the network of 64 bits, since a
// client has one of them to itself (RFC 6177).
func clientAt(address string) string {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return address
	}
	if ip, err := netip.ParseAddr(host); err == nil && ip.Is6() && !ip.Is4In6() {
		if network, err := ip.WithZone("").Prefix(64); err == nil {
			return network.String()
		}
	}
	return host
}
