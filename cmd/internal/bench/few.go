package bench

import (
	"net"
	"sync"
)

// Limits of connections: more than a workshop's tablets have, and too few for one
// stranger to take all that the machine has.
const (
	mostOfOne = 24
	mostOfAll = 200
)

// limited is a listener that hangs up on who has too many connections.
type limited struct {
	net.Listener
	lock  sync.Mutex
	of    map[string]int
	total int
}

func few(l net.Listener) net.Listener { return &limited{Listener: l, of: map[string]int{}} }

func (l *limited) Accept() (net.Conn, error) {
	for {
		c, err := l.Listener.Accept()
		if err != nil {
			return nil, err
		}
		host, _, _ := net.SplitHostPort(c.RemoteAddr().String())
		if !l.enter(host) {
			c.Close()
			continue
		}
		return &counted{Conn: c, leave: sync.OnceFunc(func() { l.leave(host) })}, nil
	}
}

func (l *limited) enter(host string) bool {
	l.lock.Lock()
	defer l.lock.Unlock()
	if l.total >= mostOfAll || l.of[host] >= mostOfOne {
		return false
	}
	l.total++
	l.of[host]++
	return true
}

func (l *limited) leave(host string) {
	l.lock.Lock()
	defer l.lock.Unlock()
	l.total--
	if l.of[host]--; l.of[host] == 0 {
		delete(l.of, host)
	}
}

// counted is a connection that is counted until it is closed.
type counted struct {
	net.Conn
	leave func()
}

func (c *counted) Close() error {
	c.leave()
	return c.Conn.Close()
}
