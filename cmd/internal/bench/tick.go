package bench

import (
	"encoding/json"
	"errors"
	"net/http"
	"sync"
	"time"

	"fencecard/cmd/internal/ticks"
)

// Limits of what is sent: ticks that a tablet queued for a week, and one form.
const (
	mostTicks = 1 << 20
	mostForm  = 64 << 10
	mostWords = 4 << 10
)

// mostShared bounds the ticks and measures that shared devices may have stored from
// one start of the program to its end: a thousand days of work, and no full disk.
const mostShared = 200_000

const tooMany = "More than any work has; start the program anew to go on."

// taken counts what shared devices had stored.
type taken struct {
	lock sync.Mutex
	n    int
}

func (t *taken) more(n int) bool {
	t.lock.Lock()
	defer t.lock.Unlock()
	t.n += n
	return t.n <= mostShared
}

// sentTicks is what a device sends.
type sentTicks struct {
	Device string     `json:"device"`
	Sent   time.Time  `json:"sent"` // by the device's clock; zero where it does not say
	Ticks  []sentTick `json:"ticks"`
}

type sentTick struct {
	Counter int64     `json:"counter"`
	Time    time.Time `json:"time"`
	Plan    string    `json:"plan"`  // when it was ticked; "" for that of now
	Batch   string    `json:"batch"` // likewise
	tickSay
}

// tick stores ticks and answers when they last.
func (s *Server) tick(w http.ResponseWriter, r *http.Request) {
	var sent sentTicks
	if !readJSON(w, r, mostTicks, &sent) {
		return
	}
	if visiting(r).shared && !s.takenIn.more(len(sent.Ticks)) {
		fail(w, http.StatusTooManyRequests, tooMany)
		return
	}
	all := make([]ticks.Tick, len(sent.Ticks))
	highest := int64(0)
	now := time.Now()
	for i, t := range sent.Ticks {
		all[i] = s.ticked(sent, t, now)
		if err := all[i].Err(); err != nil {
			fail(w, http.StatusBadRequest, "This is no tick: "+err.Error()+".")
			return
		}
		highest = max(highest, t.Counter)
	}
	if err := s.Ticks.Add(r.Context(), all); err != nil {
		s.unstored(w, err)
		return
	}
	s.decks.tellAll()
	writeJSON(w, http.StatusOK, struct {
		Taken int64 `json:"taken"`
		State state `json:"state"`
	}{highest, s.stateFor(visiting(r), s.own(r), s.before(r))})
}

// ticked is a tick as it is stored. The clock of a tablet that lay in a drawer is
// off by any amount: by how much, is known from when it says to have sent it.
func (s *Server) ticked(sent sentTicks, t sentTick, now time.Time) ticks.Tick {
	at := t.Time
	if !sent.Sent.IsZero() {
		at = now.Add(-sent.Sent.Sub(t.Time))
	}
	if at.After(now) {
		at = now
	}
	tick := ticks.Tick{
		Device: sent.Device, Counter: t.Counter, Time: at.UTC().Truncate(time.Millisecond), Plan: t.Plan, Batch: t.Batch,
		Box: ticks.Box{Says: t.Says, Height: t.Height, Piece: t.Piece, Copy: t.Copy}, On: t.On,
	}
	if tick.Plan == "" {
		tick.Plan = s.Ticks.Plan()
	}
	if tick.Batch == "" {
		tick.Batch = s.Ticks.Batch()
	}
	if run := s.decks.saying(t.Says); run != nil {
		tick.Run, tick.Cut = run.run.Number(), run.cut()
	}
	return tick
}

// unstored answers where the disk did not take it. Why, is no matter of a device
// at the table, and would name a file.
func (s *Server) unstored(w http.ResponseWriter, err error) {
	if s.Faulty != nil {
		s.Faulty(errors.Join(errors.New("ticks were not stored"), err))
	}
	fail(w, http.StatusInternalServerError, "It could not be stored. The desk's terminal tells why.")
}

// newBatch begins a batch, in which nothing is ticked yet.
func (s *Server) newBatch(w http.ResponseWriter, r *http.Request) {
	if _, err := s.Ticks.NewBatch(r.Context(), time.Now()); err != nil {
		s.unstored(w, err)
		return
	}
	s.decks.tellAll()
	s.tellState(w, r)
}

// takeDeck gives the browser the deck of now, if that is the one it was told of.
func (s *Server) takeDeck(w http.ResponseWriter, r *http.Request) {
	var asked struct {
		FileCode string `json:"file_code"`
	}
	if !readJSON(w, r, mostWords, &asked) {
		return
	}
	v := visiting(r)
	now, _ := s.decks.latest()
	if now == nil || now.deck.Code != asked.FileCode {
		writeJSON(w, http.StatusConflict, s.stateFor(v, s.own(r), s.before(r)))
		return
	}
	setCookie(w, v.cookie("deck"), now.deck.Code)
	writeJSON(w, http.StatusOK, s.stateFor(v, now, now))
}

// readJSON reads one document of a limited size, or answers what is wrong.
func readJSON(w http.ResponseWriter, r *http.Request, most int64, into any) bool {
	d := json.NewDecoder(http.MaxBytesReader(w, r.Body, most))
	err := d.Decode(into)
	if err == nil && d.More() {
		err = errors.New("more than one document")
	}
	return err == nil || tooLarge(w, err)
}

// tooLarge answers what cannot be read; it returns false.
func tooLarge(w http.ResponseWriter, err error) bool {
	var large *http.MaxBytesError
	if errors.As(err, &large) {
		fail(w, http.StatusRequestEntityTooLarge, "That is too much at once.")
	} else {
		fail(w, http.StatusBadRequest, "That cannot be read.")
	}
	return false
}

// fail answers what is wrong in words for the page to show.
func fail(w http.ResponseWriter, status int, says string) {
	writeJSON(w, status, struct {
		Wrong string `json:"wrong"`
	}{says})
}
