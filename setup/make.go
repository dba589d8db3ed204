package setup

import (
	"context"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/ladder"
	"fencecard/setup/proof"
	"fencecard/setup/remark"
	"fencecard/setup/search/budget"
)

// Make turns a plan into a deck with the default options.
func Make(plan *joinery.Plan) (*deck.Deck, error) {
	return MakeWith(context.Background(), plan, Options{})
}

// Options are a maker's wishes for [MakeWith]. The zero value searches for the
// fewest changes for 2 s at the most.
type Options struct {
	Plain  bool // the best bit for every cut in a sensible order, without search
	Search budget.Limit
	Below  joinery.Time // only what takes less is looked for; 0 for the least
}

// MakeWith turns a plan into a deck: it finds the ways to make every channel,
// chooses among them and orders the setups so that changing the table takes
// the least time, and writes the runs. Called off by the context, it makes the
// best deck found so far. What it returns is proved and has its code. The error
// holds every fault that stops the deck, as [plantext.Faults].
func MakeWith(ctx context.Context, plan *joinery.Plan, o Options) (*deck.Deck, error) {
	jobs, err := Jobs(plan)
	if err != nil {
		return nil, err
	}
	d := &deck.Deck{Plan: plan}
	if d.Setups, d.Changes, err = plain(d, jobs); err != nil {
		return nil, err
	}
	if !o.Plain {
		cheapest(ctx, d, jobs, o)
	}
	bySensibleOrder(ctx, d, jobs, o)
	deckcode.Seal(d)
	remark.Add(d)
	if err := proof.Holds(d); err != nil {
		return nil, err
	}
	return d, nil
}

// write makes the run of one step, but for its number and heights.
func write(job Job, run deck.Step, shop *joinery.Shop) deck.Run {
	r := RunOf(job.Piece, job.Cut, job.Channel, run, shop.Scale)
	r.Cap = ladder.CapFor(run.Bit, job.Piece.Wood, shop)
	r.Raised = raised(&r, shop)
	r.Screw = screwOf(&r, shop.Scale)
	return r
}

// RunOf writes what the geometry of one run decides: which end leads, where the
// work stands at the start and the stop, and how it goes across an end. Number,
// heights and cap are left to the caller.
func RunOf(p *joinery.Piece, cut *joinery.Cut, ch joinery.Channel, run deck.Step, scale measure.Scale) deck.Run {
	r := dropOf(deck.Run{Piece: p, Cut: cut, Channel: ch, Step: run}, p.Size)
	if r.Start != nil && cut != nil && cut.Bored {
		half := run.Bit.True() / 2
		r.Hole = &deck.Hole{FromLead: r.A + half, FromFence: run.NearEdge + half}
	}
	if r.B < r.Length {
		r.End, r.Stop = deck.Lift, stopMark(r.B, r.Length, r.Along())
	}
	r.Nibble, r.Guided = nibbled(p, cut, ch, run, scale), guided(p, cut, ch, run, scale)
	return r
}
