package ticks

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"time"
	"unicode/utf8"

	"fencecard/joinery/pattern"
)

// Box is one box to tick: a height of a run for one of its pieces.
type Box struct {
	Says   string `json:"says"`         // the key of what the run says
	Height int    `json:"setup_height"` // of the run's heights, from 1
	Piece  string `json:"piece"`
	Copy   int    `json:"copy"` // which of the piece's count, from 1
}

// Tick is a box that was ticked or unticked.
type Tick struct {
	Device  string    `json:"device"`
	Counter int64     `json:"counter"` // of the device, from 1: a tick that comes twice counts once
	Time    time.Time `json:"time"`
	Plan    string    `json:"plan"`
	Batch   string    `json:"batch"`
	Run     string    `json:"run,omitempty"` // its number when it was ticked
	Cut     string    `json:"cut,omitempty"` // what the run cuts, for when what it says has changed
	Box
	On bool `json:"on"`
}

// Reading is what was measured for a run.
type Reading struct {
	Time   time.Time         `json:"time"`
	Plan   string            `json:"plan"`
	Batch  string            `json:"batch"`
	Run    string            `json:"run,omitempty"`
	Says   string            `json:"says"`
	What   string            `json:"what"`   // "marks" or "cut"
	Values map[string]string `json:"values"` // by the name of the question, as typed
}

// start is the line that begins a batch.
type start struct {
	Begins string    `json:"begins"` // the batch
	Plan   string    `json:"plan"`
	Name   string    `json:"name"` // of the plan's file, for whoever reads the file
	Time   time.Time `json:"time"`
}

// Limits of what one line may hold: more than any device of ours says.
const (
	longestLine  = 16 << 10
	longestName  = 1000
	longestValue = 100
	mostValues   = 20
	mostHeights  = 10_000
	mostCopies   = 1_000_000
)

var (
	isKey    = pattern.New(`^[0-9a-f]{16}$`)
	isDevice = pattern.New(`^[0-9A-Za-z_-]{1,64}$`)
	isBatch  = pattern.New(`^\d{4}-\d\d-\d\d [a-z]{1,4}$`)
	isWord   = pattern.New(`^[a-z-]{1,20}$`)
)

// IsKey reports whether a text is written as a plan or as what a run says is.
func IsKey(text string) bool { return isKey.MatchString(text) }

// Err says why a tick is none, nil where it is one.
func (t *Tick) Err() error {
	switch {
	case !isDevice.MatchString(t.Device):
		return errors.New("the device has no name of letters and digits")
	case t.Counter < 1:
		return errors.New("the counter is not counted from 1")
	case !isKey.MatchString(t.Plan), !isBatch.MatchString(t.Batch):
		return errors.New("it names no plan and batch")
	case !isKey.MatchString(t.Says):
		return errors.New("it names no run")
	case t.Height < 1 || t.Height > mostHeights || t.Copy < 1 || t.Copy > mostCopies:
		return errors.New("heights and copies are counted from 1")
	case !isName(t.Piece), !isName(t.Run), !isName(t.Cut):
		return errors.New("a name is too long, or is no text")
	case !isTime(t.Time):
		return errors.New("its time is none")
	}
	return nil
}

// Err says why a reading is none, nil where it is one.
func (r *Reading) Err() error {
	if !isKey.MatchString(r.Plan) || !isBatch.MatchString(r.Batch) || !isKey.MatchString(r.Says) ||
		!isWord.MatchString(r.What) || !isName(r.Run) || len(r.Values) > mostValues || !isTime(r.Time) {
		return errors.New("it names no run, or measures nothing")
	}
	for name, value := range r.Values {
		if !isWord.MatchString(name) || len(value) > longestValue || !utf8.ValidString(value) {
			return fmt.Errorf("%q is no measure", name)
		}
	}
	return nil
}

func (s *start) err() error {
	if !isBatch.MatchString(s.Begins) || !isKey.MatchString(s.Plan) || !isName(s.Name) || !isTime(s.Time) {
		return errors.New("it begins no batch")
	}
	return nil
}

func isName(text string) bool { return len(text) <= longestName && utf8.ValidString(text) }

// isTime reports whether JSON can say the time.
func isTime(t time.Time) bool { return t.Year() >= 0 && t.Year() <= 9999 }

// read reads one line into whichever it is, and hands it on. It reports whether
// it is any.
func read(line []byte, tick func(Tick), reading func(Reading), begin func(start)) bool {
	if len(line) > longestLine {
		return false
	}
	var kind struct {
		Begins *string         `json:"begins"`
		Device *string         `json:"device"`
		Values json.RawMessage `json:"values"`
	}
	if json.Unmarshal(line, &kind) != nil {
		return false
	}
	switch {
	case kind.Begins != nil:
		var s start
		if json.Unmarshal(line, &s) != nil || s.err() != nil {
			return false
		}
		begin(s)
	case kind.Device != nil:
		var t Tick
		if json.Unmarshal(line, &t) != nil || t.Err() != nil {
			return false
		}
		tick(t)
	case kind.Values != nil:
		var r Reading
		if json.Unmarshal(line, &r) != nil || r.Err() != nil {
			return false
		}
		reading(r)
	default:
		return false
	}
	return true
}

// lines writes documents, a line each.
func lines[T any](all ...T) ([]byte, error) {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	for _, one := range all {
		if err := e.Encode(one); err != nil {
			return nil, err
		}
	}
	return b.Bytes(), nil
}
