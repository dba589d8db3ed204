package bench

import (
	"context"
	"slices"
	"sync"
	"time"

	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
)

// decks are those that browsers may have before them: the one of the plan as it
// is now, and former ones, since a browser keeps its own until it takes another.
type decks struct {
	lock    sync.Mutex
	now     *shown // nil while the plan never made one
	fault   error  // what is wrong with the plan now, nil for nothing
	former  []*shown
	changed chan struct{} // closed at the next change of anything that a state says
	digest  string        // of the files that the deck of now, or its fault, came from
}

// mostFormer bounds the decks that are kept: of those that browsers have, more than
// stand at one table.
const mostFormer = 12

func (ds *decks) init() { ds.changed = make(chan struct{}) }

// shown is a deck as it is served.
type shown struct {
	deck   *deck.Deck
	planAt string // of the screen on which the plan is written, "" for none
	begins string // where plans are begun, "" for none
	all    []*told
	runs   map[string]*told // by what they say

	asked map[string]attable.Measures // what can be measured, by a run's number

	lock    sync.Mutex
	pages   map[bool][]byte     // the document, for shared devices or not
	answers map[string]answered // to what was measured in this batch
}

// told is a run and its setup.
type told struct {
	says  string
	setup *deck.Setup
	run   *deck.Run
}

// cut is what the run cuts, in words that stay when numbers change.
func (t *told) cut() string { return t.run.Cut.Name + " " + t.run.Channel.Part }

func show(d *deck.Deck) *shown {
	claims := proof.Of(d)
	s := &shown{deck: d, runs: map[string]*told{}, pages: map[bool][]byte{}, answers: map[string]answered{}, asked: attable.AllMeasures(d.Plan, &claims)}
	for i := range d.Setups {
		u := &d.Setups[i]
		for k := range u.Runs {
			t := &told{deckcode.Says(u, &u.Runs[k]), u, &u.Runs[k]}
			s.all = append(s.all, t)
			s.runs[t.says] = t
		}
	}
	return s
}

// seen reports whether any browser has it.
func (s *shown) seen() bool {
	s.lock.Lock()
	defer s.lock.Unlock()
	return len(s.pages) > 0
}

// find returns the run of a number, nil for none.
func (s *shown) find(number string) *told {
	for _, t := range s.all {
		if t.run.Number() == number {
			return t
		}
	}
	return nil
}

// differs counts the runs that say something else in the other deck, that only one of
// both has, or for which fence or bit are set otherwise.
func (s *shown) differs(other *shown) int {
	return max(s.without(other), other.without(s))
}

func (s *shown) without(other *shown) int {
	n := 0
	for says, t := range s.runs {
		if o := other.runs[says]; o == nil || !t.setLike(o) {
			n++
		}
	}
	return n
}

// setLike reports whether fence and bit are set to the same for two runs that say the
// same: the setup book may have learnt other numbers meanwhile.
func (t *told) setLike(other *told) bool {
	return t.setup.SetTo() == other.setup.SetTo() && slices.Equal(t.setup.Rungs(), other.setup.Rungs())
}

// made takes what came of making the deck.
func (s *Server) made(d *deck.Deck, err error) {
	s.decks.lock.Lock()
	was := s.decks.fault
	s.decks.fault = err
	if err == nil {
		next := show(d)
		next.begins = s.Begin
		if s.Desk != nil && s.Begin != planAddress {
			next.planAt = planAddress
		}
		if s.decks.now != nil && s.decks.now.deck.Code != d.Code && s.decks.now.seen() {
			s.decks.former = append(s.decks.former, s.decks.now)
			if len(s.decks.former) > mostFormer {
				s.decks.former = s.decks.former[1:]
			}
		}
		s.decks.now = next
	}
	s.decks.lock.Unlock()
	if s.Faulty != nil && text(was) != text(err) {
		s.Faulty(err)
	}
	s.decks.tellAll()
}

func text(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// tellAll wakes those who wait for a change.
func (ds *decks) tellAll() {
	ds.lock.Lock()
	defer ds.lock.Unlock()
	close(ds.changed)
	ds.changed = make(chan struct{})
}

// next is closed at the next change.
func (ds *decks) next() <-chan struct{} {
	ds.lock.Lock()
	defer ds.lock.Unlock()
	return ds.changed
}

// latest is the deck of now and what is wrong with the plan.
func (ds *decks) latest() (*shown, error) {
	ds.lock.Lock()
	defer ds.lock.Unlock()
	return ds.now, ds.fault
}

// coded returns the deck of a code, nil where it is not kept.
func (ds *decks) coded(code string) *shown {
	ds.lock.Lock()
	defer ds.lock.Unlock()
	if ds.now != nil && ds.now.deck.Code == code {
		return ds.now
	}
	for i := len(ds.former) - 1; i >= 0; i-- {
		if ds.former[i].deck.Code == code {
			return ds.former[i]
		}
	}
	return nil
}

// saying returns the run of a key in any deck, the deck of now first.
func (ds *decks) saying(says string) *told {
	ds.lock.Lock()
	defer ds.lock.Unlock()
	if ds.now == nil {
		return nil
	}
	if t := ds.now.runs[says]; t != nil {
		return t
	}
	for i := len(ds.former) - 1; i >= 0; i-- {
		if t := ds.former[i].runs[says]; t != nil {
			return t
		}
	}
	return nil
}

// stands notes what files the deck, or its fault, came from.
func (ds *decks) stands(digest string) {
	ds.lock.Lock()
	defer ds.lock.Unlock()
	ds.digest = digest
}

// old reports whether the files are others than those that the deck came from.
func (ds *decks) old(digest string) bool {
	ds.lock.Lock()
	defer ds.lock.Unlock()
	return ds.digest != digest
}

// look is how often the files are looked at. A change counts when it was there
// twice: an editor may write a file in several goes.
const look = 200 * time.Millisecond

// watch makes the deck anew whenever a file changed, and sees ticks that other
// programs stored, until the context ends.
func (s *Server) watch(ctx context.Context) {
	type result struct {
		deck   *deck.Deck
		err    error
		digest string
	}
	results := make(chan result)
	making, callOff := "", context.CancelFunc(func() {})
	defer func() { callOff() }()
	before := s.decks.digest
	every := time.NewTicker(look)
	defer every.Stop()
	for {
		select {
		case <-ctx.Done():
			return
		case r := <-results:
			if r.digest == making {
				making = ""
				s.decks.stands(r.digest)
				s.made(r.deck, r.err)
			}
		case <-every.C:
			if more, err := s.Ticks.Look(); err == nil && more {
				s.decks.tellAll()
			}
			digest := s.Look()
			settled := digest == before
			before = digest
			if !settled || digest == making || digest == s.decks.digest && making == "" {
				continue
			}
			callOff()
			working, stop := context.WithCancel(ctx)
			callOff, making = stop, digest
			go func() {
				d, err := s.Make(working)
				select {
				case results <- result{d, err, digest}:
				case <-ctx.Done():
				}
			}()
		}
	}
}
