package setup

import (
	"context"

	"fencecard/joinery"
	"fencecard/setup/search"
)

// Make turns a plan into a deck with the default options.
func Make(plan *joinery.Plan) (*Deck, error) {
	return MakeWith(context.Background(), plan, Options{})
}

// Options are a maker's wishes for [MakeWith]. The zero value searches for the
// fewest changes for 2 s at the most.
type Options struct {
	Plain  bool // the best bit for every cut in a sensible order, without search
	Search search.Limit
}

// MakeWith turns a plan into a deck: it finds the ways to make every channel,
// chooses among them and orders the setups so that changing the table takes
// the least time, and writes the cards. Called off by the context, it makes the
// best deck found so far. The error holds every fault that stops the deck, as
// [joinery.Faults].
func MakeWith(ctx context.Context, plan *joinery.Plan, o Options) (*Deck, error) {
	jobs, err := Jobs(plan)
	if err != nil {
		return nil, err
	}
	d := &Deck{Plan: plan}
	if d.Setups, d.Changes, err = plain(d, jobs); err != nil {
		return nil, err
	}
	if !o.Plain {
		cheapest(d, ctx, jobs, o.Search)
	}
	Remark(d)
	return d, nil
}

// write makes the card of one run, but for its number and heights.
func write(job Job, run Run, shop *joinery.Shop) Card {
	c := CardOf(job.Piece, job.Cut, job.Channel, run)
	c.Cap = CapFor(run.Bit, job.Piece.Wood, shop)
	return c
}

// CardOf writes what the geometry of one run decides: which end leads and
// where the work stands at the start and the stop. Number, heights and cap are
// left to the caller.
func CardOf(p *joinery.Piece, cut *joinery.Cut, ch joinery.Channel, run Run) Card {
	c := Card{Piece: p, Cut: cut, Channel: ch, Run: run, Leads: Leads(run.Fence, run.Down)}
	d := run.Bit.True()
	c.Length = p.Size.Between(c.Leads)
	c.A, c.B = ends(ch, c.Leads, c.Length)
	if c.A > 0 {
		c.Begin, c.Start = Drop, startMark(c.A, c.Length, d)
	}
	if c.B < c.Length {
		c.End, c.Stop = Lift, stopMark(c.B, c.Length, d)
	}
	return c
}
