package proof

import (
	"slices"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// Report is the outcome of a proof.
type Report struct {
	Results  []Result     // one for each run, in running order
	Faults   []Difference // of the runs, in running order, then of the deck as a whole
	Warnings []deck.Warning
	Removed  []Volume // by piece, in the order of the plan; empty where it was not asked for
}

// Volume is the wood that the runs take out of one piece.
type Volume struct {
	Piece string
	MM3   float64 // cubic millimetres
}

// Proved reports whether every run cuts what the plan asks for.
func (r *Report) Proved() bool { return len(r.Faults) == 0 }

// Result is the outcome for one run.
type Result struct {
	Claimed *Run
	Travel  measure.Length // between the marks, where the run has both
	Faults  []Difference
}

// Proved reports whether the run cuts what the plan asks for.
func (r *Result) Proved() bool { return len(r.Faults) == 0 }

// Difference is one way in which a deck differs from its plan.
type Difference struct {
	Run        string         // its number; "" for the deck as a whole
	Piece, Cut string         // "" where it is not about one
	Field      string         // which number or word, as in "start, the layout line"
	Off        measure.Length // by how much, 0 where it is not a length
	Text       string         // the whole of it in trade words, without a full stop
	Place      plantext.Place // in a deck that was read, else no place
}

// String gives the difference in one line, with its run and its place.
func (d Difference) String() string {
	text := d.Text
	if d.Run != "" {
		text = "run " + d.Run + ": " + text
	}
	if d.Place.Known() {
		text = d.Place.String() + ": " + text
	}
	return text
}

// Add adds differences that were found elsewhere to the runs they are about.
func (r *Report) Add(found []Difference) {
	for _, d := range found {
		for i := range r.Results {
			if result := &r.Results[i]; result.Claimed.Number == d.Run {
				d.Place = result.Claimed.Place
				result.Faults = append(result.Faults, d)
			}
		}
		r.Faults = append(r.Faults, d)
	}
}

// Unread is the report on a deck that could not be read.
func Unread(faults plantext.Faults) Report {
	var r Report
	for _, f := range faults {
		r.Faults = append(r.Faults, Difference{Field: "the deck", Text: f.Words(), Place: f.Place})
	}
	return r
}

// Err returns nil for a deck that proves, else an error that tells every
// difference in a line of its own.
func (r *Report) Err() error {
	if r.Proved() {
		return nil
	}
	return refusal(r.Faults)
}

// besides are the fields of a deck in which it says more than its runs.
var besides = []string{"joints", "cautions", "warnings"}

// refusal is a deck that does not prove, as an error.
type refusal []Difference

// Error lists the differences.
func (f refusal) Error() string {
	var b strings.Builder
	if slices.ContainsFunc(f, func(d Difference) bool { return d.Run != "" || !slices.Contains(besides, d.Field) }) {
		b.WriteString("the runs do not cut what the plan asks for:")
	} else {
		b.WriteString("the runs cut what the plan asks for, but what the deck says besides is not what it should say; " +
			"somebody changed it, or an earlier fencecard wrote it in other words: make the deck from its plan again:")
	}
	for _, d := range f {
		b.WriteString("\n  " + d.String())
	}
	return b.String()
}
