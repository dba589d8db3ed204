package bench

import (
	"errors"
	"fmt"
	"hash/fnv"
	"net"
	"strconv"
)

// loopback is the desk's address, which no other machine reaches.
const loopback = "127.0.0.1"

// Ports from which a plan gets its own: registered ones that few programs have,
// below those that systems give to outgoing connections.
const (
	firstPort = 20_000
	ports     = 10_000
	portTries = 20
)

// Listen opens the sites: the desk's and, unless shared is "", the one at that
// address, at the same port. Without a port it is one that comes from the plan's
// key, so that a browser finds at the next start what it kept; where that is
// taken, another.
func Listen(port int, plan, shared string) ([]Site, error) {
	if port != 0 {
		return listen(port, shared)
	}
	sum := fnv.New32a()
	sum.Write([]byte(plan))
	for try := range uint32(portTries) {
		sites, err := listen(int(firstPort+(sum.Sum32()+try)%ports), shared)
		if err == nil {
			return sites, nil
		}
	}
	return listen(0, shared)
}

func listen(port int, shared string) ([]Site, error) {
	desk, err := net.Listen("tcp4", net.JoinHostPort(loopback, strconv.Itoa(port)))
	if err != nil {
		return nil, listenFault(loopback, port, err)
	}
	sites := []Site{{desk, false}}
	if shared == "" {
		return sites, nil
	}
	port = desk.Addr().(*net.TCPAddr).Port
	l, err := net.Listen("tcp", net.JoinHostPort(shared, strconv.Itoa(port)))
	if err != nil {
		desk.Close()
		return nil, listenFault(shared, port, err)
	}
	return append(sites, Site{l, true}), nil
}

func listenFault(address string, port int, err error) error {
	var op *net.OpError
	if errors.As(err, &op) {
		err = op.Err
	}
	return fmt.Errorf("nothing can be served at %s, port %d: %w; try another --port, or see that the address is one of this machine", address, port, err)
}

// LocalAddresses are those by which other machines of a local network reach this
// one.
func LocalAddresses() ([]string, error) {
	all, err := net.InterfaceAddrs()
	if err != nil {
		return nil, errors.New("the system does not tell its addresses; name one, as in --share=192.168.1.20")
	}
	var local []string
	for _, a := range all {
		if n, ok := a.(*net.IPNet); ok && n.IP.To4() != nil && n.IP.IsPrivate() {
			local = append(local, n.IP.String())
		}
	}
	return local, nil
}
