package bench

import (
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strings"
	"time"
)

// state is what a page is told that changes while it is open.
type state struct {
	Code     string    `json:"code"`      // of the deck that this browser would get now
	FileCode string    `json:"file_code"` // of the deck of the plan as it is now
	Differs  int       `json:"differs"`   // runs that differ between the deck asked about and that of the file
	Fault    string    `json:"fault"`     // what is wrong with the plan, "" for nothing
	Plan     string    `json:"plan"`
	Batch    string    `json:"batch"`
	Ticks    []tickSay `json:"ticks"`
	Changed  []string  `json:"changed"` // runs that were ticked when they said something else
	Tries    []trySay  `json:"tries"`
	Shared   bool      `json:"shared"`
}

type tickSay struct {
	Says   string `json:"says"`
	Height int    `json:"height"`
	Piece  string `json:"piece"`
	Copy   int    `json:"copy"`
	On     bool   `json:"on"`
}

type trySay struct {
	Says string `json:"says"`
	What string `json:"what"`
	HTML string `json:"html"`
}

// own is the deck that a browser has: the one it took last, else that of now;
// nil while there is none.
func (s *Server) own(r *http.Request) *shown {
	if own := s.decks.coded(cookieOf(r, visiting(r).cookie("deck"))); own != nil {
		return own
	}
	now, _ := s.decks.latest()
	return now
}

// before is the deck of the document that asks, nil where that is not known here any
// more: the program may have been started anew since.
func (s *Server) before(r *http.Request) *shown {
	if code := r.URL.Query().Get("deck"); code != "" {
		return s.decks.coded(code)
	}
	return s.own(r)
}

// stateFor says how things stand to a browser that has a deck before it.
func (s *Server) stateFor(v visitor, own, before *shown) state {
	st := state{Plan: s.Ticks.Plan(), Batch: s.Ticks.Batch(), Ticks: []tickSay{}, Changed: []string{}, Tries: []trySay{}, Shared: v.shared}
	for _, t := range s.Ticks.Stands() {
		st.Ticks = append(st.Ticks, tickSay{t.Says, t.Height, t.Piece, t.Copy, t.On})
	}
	now, fault := s.decks.latest()
	if fault != nil {
		st.Fault = faultLine(fault, v.shared)
	}
	if now == nil {
		return st
	}
	st.Code, st.FileCode, st.Differs = own.deck.Code, now.deck.Code, len(now.all)
	if before == nil {
		before = now
	} else {
		st.Differs = before.differs(now)
	}
	st.Changed = s.changedSince(before)
	for _, reading := range s.Ticks.Readings() {
		if t := before.runs[reading.Says]; t != nil {
			st.Tries = append(st.Tries, trySay{reading.Says, reading.What, before.remembered(t, reading).HTML})
		}
	}
	return st
}

// changedSince are the runs of a deck that were ticked in this batch when they
// said something else, and not since.
func (s *Server) changedSince(d *shown) []string {
	type cut struct{ piece, cut string }
	was, is := map[cut]bool{}, map[string]bool{}
	for _, t := range s.Ticks.Told() {
		is[t.Says] = true
		if d.runs[t.Says] == nil {
			was[cut{t.Piece, t.Cut}] = true
		}
	}
	changed := []string{}
	for says, t := range d.runs {
		if !is[says] && was[cut{t.run.Piece.Name, t.cut()}] {
			changed = append(changed, says)
		}
	}
	slices.Sort(changed)
	return changed
}

// faultLine is what is wrong in one line. A shared device sees nothing of the
// file.
func faultLine(fault error, shared bool) string {
	if shared {
		return "The plan has a fault; the desk tells which."
	}
	line, _, _ := strings.Cut(strings.TrimSpace(fault.Error()), "\n")
	return line
}

func (s *Server) tellState(w http.ResponseWriter, r *http.Request) {
	writeJSON(w, http.StatusOK, s.stateFor(visiting(r), s.own(r), s.before(r)))
}

func writeJSON(w http.ResponseWriter, status int, v any) {
	w.Header().Set("Content-Type", "application/json")
	w.WriteHeader(status)
	_ = json.NewEncoder(w).Encode(v) // whoever asked may be gone
}

// heartbeat keeps a connection open over which nothing else is to be said.
const heartbeat = 15 * time.Second

// events sends the state at once and whenever it changed.
func (s *Server) events(w http.ResponseWriter, r *http.Request) {
	control := http.NewResponseController(w)
	// The server's own limits would end it after a minute.
	_ = control.SetReadDeadline(time.Time{})
	w.Header().Set("Content-Type", "text/event-stream")
	send := func(text string) bool {
		if control.SetWriteDeadline(time.Now().Add(2*heartbeat)) != nil {
			return false
		}
		if _, err := fmt.Fprint(w, text); err != nil {
			return false
		}
		return control.Flush() == nil
	}
	last := ""
	for {
		changed := s.decks.next()
		data, err := json.Marshal(s.stateFor(visiting(r), s.own(r), s.before(r)))
		if err != nil {
			return
		}
		if string(data) != last {
			last = string(data)
			if !send("event: state\ndata: " + last + "\n\n") {
				return
			}
		}
		if !s.wait(r, changed, send) {
			return
		}
	}
}

// wait returns true at a change, and false when nobody listens any more.
func (s *Server) wait(r *http.Request, changed <-chan struct{}, send func(string) bool) bool {
	for {
		select {
		case <-changed:
			return true
		case <-time.After(heartbeat):
			if !send(": here\n\n") {
				return false
			}
		case <-r.Context().Done():
			return false
		case <-s.ended:
			return false
		}
	}
}
