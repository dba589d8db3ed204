package bench

import (
	"context"
	"crypto/rand"
	"errors"
	"io"
	"log"
	"net"
	"net/http"
	"sync"
	"time"

	"fencecard/cmd/internal/ticks"
	"fencecard/setup/deck"
)

// Options say what is served.
type Options struct {
	// Make reads the plan and makes its deck. It may be called off.
	Make func(ctx context.Context) (*deck.Deck, error)
	// Look tells of all that Make reads: another text where any of it changed.
	Look func() string
	// Ticks are those of the plan.
	Ticks *ticks.File
	// Desk answers what lies under /plan, for the desk alone; nil for nothing.
	Desk http.Handler
	// Begin is the address where plans are begun and gone on with, "" for none; it is the
	// desk's own where there is no plan yet.
	Begin string
	// Letting is told the address by which the next device is let in, at the
	// start and whenever the last one was used.
	Letting func(address string)
	// Faulty is told what is wrong with the plan whenever that changes, and nil
	// when it was mended.
	Faulty func(err error)
}

// Server is the bench page.
type Server struct {
	Options
	decks decks
	keys  keys
	ended chan struct{} // closed when no more events are sent

	printing chan struct{} // one at a time: pages take memory
	takenIn  taken         // what shared devices had stored
}

// New makes a server. It makes the deck for the first time; a plan that is at
// fault is no error here, but served as what it is.
func New(ctx context.Context, o Options) *Server {
	s := &Server{Options: o, ended: make(chan struct{}), printing: make(chan struct{}, 1)}
	s.decks.init()
	s.decks.digest = o.Look()
	d, err := o.Make(ctx)
	s.made(d, err)
	return s
}

// Times for slow clients. Events set their own.
const (
	headerTime = 5 * time.Second
	bodyTime   = 30 * time.Second
	answerTime = time.Minute
	idleTime   = time.Minute
	endTime    = 2 * time.Second
	headerSize = 16 << 10
)

// Site is an address at which the page is served.
type Site struct {
	Listener net.Listener
	Shared   bool // for those alone who were let in
}

func (s Site) address() string { return s.Listener.Addr().String() }

// Serve serves all sites until the context ends. Then it lets what is being
// answered end, for two seconds at the most, and returns nil.
func (s *Server) Serve(ctx context.Context, sites ...Site) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	var all sync.WaitGroup
	failed := make(chan error, len(sites))
	var servers []*http.Server
	for _, site := range sites {
		if site.Shared {
			s.keys.open(site.address(), s.Letting)
		}
		h := &http.Server{
			Handler:           s.site(site.address(), site.Shared),
			ReadHeaderTimeout: headerTime,
			ReadTimeout:       bodyTime,
			WriteTimeout:      answerTime,
			IdleTimeout:       idleTime,
			MaxHeaderBytes:    headerSize,
			ErrorLog:          log.New(io.Discard, "", 0), // of strangers' slips
		}
		servers = append(servers, h)
		all.Go(func() {
			if err := h.Serve(few(site.Listener)); !errors.Is(err, http.ErrServerClosed) {
				failed <- err
				stop()
			}
		})
	}
	all.Go(func() { s.watch(ctx) })
	<-ctx.Done()
	close(s.ended)
	ending, end := context.WithTimeout(context.Background(), endTime)
	defer end()
	for _, h := range servers {
		if h.Shutdown(ending) != nil {
			h.Close()
		}
	}
	all.Wait()
	select {
	case err := <-failed:
		return err
	default:
		return nil
	}
}

// site is all that one address answers.
func (s *Server) site(address string, shared bool) http.Handler {
	mux := http.NewServeMux()
	for _, path := range []string{"/{$}", "/setup/{n}", "/run/{n}", "/try/{n}", "/print"} {
		mux.HandleFunc("GET "+path, s.document)
	}
	mux.HandleFunc("GET /state", s.tellState)
	mux.HandleFunc("GET /events", s.events)
	mux.HandleFunc("POST /ticks", s.tick)
	mux.HandleFunc("POST /try", s.try)
	mux.HandleFunc("POST /take", s.takeDeck)
	mux.HandleFunc("GET /print/{file}", s.print)
	mux.HandleFunc("GET /{file}", s.part)
	if !shared {
		mux.HandleFunc("POST /batch", s.newBatch)
		if s.Desk != nil {
			mux.Handle("GET /plan", s.Desk)
			mux.Handle("/plan/", s.Desk)
		}
	} else {
		for _, path := range []string{"GET /plan", "/plan/"} {
			mux.HandleFunc(path, func(w http.ResponseWriter, _ *http.Request) { refuse(w, "The plan is written at the desk alone.") })
		}
	}
	return s.guard(address, shared, mux)
}

// secret is 128 bits that nobody guesses, in letters.
func secret() string { return rand.Text() }
