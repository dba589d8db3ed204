package whatif

import (
	"context"

	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/search/budget"
)

// Saving is a change to the plan that spares setups.
type Saving struct {
	Change string       // "setback 17/64 in instead of 1/4 in on the groove "panel""
	Less   deck.Changes // what need not be set; negative where there is more to set
	Setups int          // how many setups there are less
}

// Limits on what is tried to spare a setup. All tries of a deck together take
// a second of search at the most.
const (
	mostTries = 80 // for a deck
	trySteps  = 375_000
	mostOfOne = 12  // for one setup
	mostToTry = 300 // cuts in a plan whose setups are worth trying
)

// trier tries changes to a deck's plan.
type trier struct {
	ctx   context.Context
	d     *deck.Deck
	known map[string]*Saving // by change; nil where it spares nothing
	left  int                // changes that may still be tried
}

func newTrier(ctx context.Context, d *deck.Deck) *trier {
	t := &trier{ctx: ctx, d: d, known: map[string]*Saving{}, left: mostTries}
	cuts := 0
	for i := range d.Plan.Pieces {
		cuts += len(d.Plan.Pieces[i].Cuts)
	}
	if cuts > mostToTry {
		t.left = 0
	}
	return t
}

// saving returns the smallest change that spares a setup by changing one of its
// cuts, and whether there is one that was not tried.
func (t *trier) saving(s *deck.Setup) (saving *Saving, untried bool) {
	edits := t.edits(s)
	for _, e := range edits[:min(len(edits), mostOfOne)] {
		saved, tried := t.try(e)
		if saved != nil {
			return saved, false
		}
		untried = untried || !tried
	}
	return nil, untried || len(edits) > mostOfOne
}

// try makes the deck of the plan with a change, and says what it saves. It does
// not where a limit is reached.
func (t *trier) try(e edit) (saved *Saving, tried bool) {
	if saved, ok := t.known[e.text]; ok {
		return saved, true
	}
	if t.left == 0 || t.ctx.Err() != nil {
		return nil, false
	}
	t.left--
	t.known[e.text] = t.saved(e)
	return t.known[e.text], true
}

// saved is what a change saves; nil where it spares no setup, costs time, no
// longer fits or brings a new warning.
func (t *trier) saved(e edit) *Saving {
	plan, ok := t.changed(e)
	if !ok {
		return nil
	}
	after, err := setup.MakeWith(t.ctx, plan, setup.Options{Search: budget.Limit{Steps: trySteps}, Below: t.d.Changes.Time})
	if err != nil || len(after.Setups) >= len(t.d.Setups) || after.Changes.Time >= t.d.Changes.Time || t.warnsMore(after) {
		return nil
	}
	a, b := t.d.Changes, after.Changes
	return &Saving{
		Change: e.text,
		Setups: len(t.d.Setups) - len(after.Setups),
		Less: deck.Changes{
			Bits: a.Bits - b.Bits, Fences: a.Fences - b.Fences, Heights: a.Heights - b.Heights, Stops: a.Stops - b.Stops,
			Passes: a.Passes - b.Passes, Fits: a.Fits - b.Fits,
			Time: a.Time - b.Time,
		},
	}
}

// warnsMore reports whether a deck has a warning that this one has not.
func (t *trier) warnsMore(after *deck.Deck) bool {
	type about struct{ code, piece, cut string }
	before := map[about]int{}
	for _, w := range t.d.Warnings {
		before[about{w.Code, w.Piece, w.Cut}]++
	}
	for _, w := range after.Warnings {
		a := about{w.Code, w.Piece, w.Cut}
		if before[a]--; before[a] < 0 {
			return true
		}
	}
	return false
}
