// Package deckpart makes a deck of a part of another, under the numbers of the whole:
// a spoiled piece anew, or one setup again.
package deckpart

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// Only names the part of a deck that is wanted again. An empty list wants everything.
type Only struct {
	Pieces []string // by name; capitals do not count
	Setups []int    // by number
}

// Of returns the runs wanted, under the numbers they have in the full deck.
// A setup keeps the rungs of its ladder that its remaining runs use; the
// changes are those of the setups that remain. A piece or setup that the deck
// does not have is a fault. The deck given is not changed.
func Of(d *deck.Deck, o Only) (*deck.Deck, error) {
	if len(o.Pieces) == 0 && len(o.Setups) == 0 {
		return d, nil
	}
	if err := o.check(d); err != nil {
		return nil, err
	}
	part := *d
	part.Part = true
	plan := *d.Plan
	part.Plan = &plan
	part.Numbers = nil
	for i, p := range plan.Pieces {
		if o.wantsPiece(p.Name) {
			part.Numbers = append(part.Numbers, d.CardNumber(i))
		}
	}
	plan.Pieces = slices.DeleteFunc(slices.Clone(plan.Pieces), func(p joinery.Piece) bool { return !o.wantsPiece(p.Name) })
	part.Setups = nil
	for _, s := range d.Setups {
		s.Runs = o.runs(&s, plan.Pieces)
		if len(s.Runs) > 0 {
			s.Heights = used(s.Heights, s.Runs)
			s.Marks = slices.DeleteFunc(slices.Clone(s.Marks), func(p deck.Pair) bool {
				return !slices.ContainsFunc(s.Runs, func(r deck.Run) bool { return r.Pair == p.Letter })
			})
			part.Setups = append(part.Setups, s)
		}
	}
	if len(part.Setups) == 0 {
		return nil, plantext.Faults{{
			Problem: fmt.Sprintf("no run of %s is run at setup %s", quoted(o.Pieces), numbers(o.Setups)),
			Remedy:  "name the piece alone to see at which setups it is run"}}
	}
	part.Changes = deck.Count(part.Setups, &plan.Shop)
	part.Joints = slices.DeleteFunc(slices.Clone(d.Joints), func(j deck.Joint) bool {
		return !o.wantsPiece(j.Into.Piece.Name) && !o.wantsPiece(j.Part.Piece.Name)
	})
	part.Warnings = slices.DeleteFunc(slices.Clone(d.Warnings), func(w deck.Warning) bool {
		return w.Piece != "" && !o.wantsPiece(w.Piece)
	})
	return &part, nil
}

// runs returns the runs of a setup that are wanted, moved to the pieces of
// the smaller plan.
func (o Only) runs(s *deck.Setup, pieces []joinery.Piece) []deck.Run {
	if len(o.Setups) > 0 && !slices.Contains(o.Setups, s.Number) {
		return nil
	}
	var runs []deck.Run
	for _, r := range s.Runs {
		at := slices.IndexFunc(pieces, func(p joinery.Piece) bool { return p.Name == r.Piece.Name })
		if at >= 0 {
			r.Piece = &pieces[at]
			runs = append(runs, r)
		}
	}
	return runs
}

func (o Only) wantsPiece(name string) bool {
	return len(o.Pieces) == 0 || slices.ContainsFunc(o.Pieces, func(want string) bool { return sameName(want, name) })
}

// used returns the rungs of a ladder that some run uses.
func used(ladder []measure.Length, runs []deck.Run) []measure.Length {
	return slices.DeleteFunc(slices.Clone(ladder), func(rung measure.Length) bool {
		return !slices.ContainsFunc(runs, func(r deck.Run) bool { return slices.Contains(r.Heights, rung) })
	})
}

// check faults every name and number that the deck does not have.
func (o Only) check(d *deck.Deck) error {
	var faults plantext.Faults
	for _, want := range o.Pieces {
		if !slices.ContainsFunc(d.Plan.Pieces, func(p joinery.Piece) bool { return sameName(want, p.Name) }) {
			faults.Add(plantext.Fault{Problem: fmt.Sprintf("the plan has no piece %q", want), Remedy: "it has " + pieceNames(d.Plan)})
		}
	}
	for _, want := range o.Setups {
		if !slices.ContainsFunc(d.Setups, func(s deck.Setup) bool { return s.Number == want }) {
			faults.Add(plantext.Fault{Problem: fmt.Sprintf("the deck has no setup %d", want), Remedy: "its setups are " + setupNumbers(d)})
		}
	}
	return faults.Err()
}

func sameName(a, b string) bool { return strings.EqualFold(strings.TrimSpace(a), b) }

// mostNamed is how many names a message lists before it breaks off.
const mostNamed = 12

func pieceNames(plan *joinery.Plan) string {
	var names []string
	for _, p := range plan.Pieces {
		names = append(names, p.Name)
	}
	return quoted(names)
}

func quoted(names []string) string {
	var b strings.Builder
	for i, name := range names[:min(len(names), mostNamed)] {
		if i > 0 {
			b.WriteString(", ")
		}
		fmt.Fprintf(&b, "%q", name)
	}
	if len(names) > mostNamed {
		fmt.Fprintf(&b, " and %d more", len(names)-mostNamed)
	}
	return b.String()
}

func setupNumbers(d *deck.Deck) string {
	switch len(d.Setups) {
	case 0:
		return "none"
	case 1:
		return fmt.Sprint(d.Setups[0].Number)
	}
	return fmt.Sprintf("%d to %d", d.Setups[0].Number, d.Setups[len(d.Setups)-1].Number)
}

func numbers(ns []int) string {
	return strings.Trim(strings.ReplaceAll(fmt.Sprint(ns), " ", ", "), "[]")
}
