package proof

import (
	"strings"

	"fencecard/joinery"
)

// order checks that no channel is cut before those cuts of its piece that it
// must wait for.
func (p *prover) order(w *wanted, of *wantedPiece) {
	for _, after := range w.piece.WaitsFor(w.cut) {
		other := last(of.cut(after))
		if other == nil || len(w.runs) == 0 || p.later(w.runs[0], *other) {
			continue
		}
		p.wrongRun(w.runs[0].result, "order", 0, "the plan wants this cut after %q, which comes at run %s",
			after, p.results[other.result].Claimed.Number)
	}
}

// last returns the last run of all the channels of a cut, nil where none is made.
func last(channels []wanted) *run {
	var last *run
	for i := range channels {
		if n := len(channels[i].runs); n > 0 {
			if r := &channels[i].runs[n-1]; last == nil || r.result > last.result {
				last = r
			}
		}
	}
	return last
}

// later reports whether one run is made when another is finished. Between
// marks all runs of a setup go through at each height in turn; between blocks
// only those of one climb do.
func (p *prover) later(r, other run) bool {
	if p.plan.Shop.Stops != joinery.Blocks || r.setup != other.setup {
		return r.setup > other.setup
	}
	a, b := p.results[r.result].Claimed, p.results[other.result].Claimed
	return r.result > other.result && (a.Climb == 0 || a.Climb > b.Climb)
}

// changes counts anew what has to be set.
func (p *prover) changes() {
	var want Changes
	setups := p.claims.Setups
	for i, s := range setups {
		newBit := i == 0 || setups[i-1].Bit.Name != s.Bit.Name
		if newBit {
			want.Bits++
		}
		if newBit || setups[i-1].Fence.NearEdge != s.Fence.NearEdge {
			want.Fences++
		}
		heights, stops := p.settings(&setups[i])
		want.Heights += heights
		want.Stops += stops
		for j := range s.Runs {
			c := &s.Runs[j]
			want.Passes += c.Count * len(c.Heights) * c.sideways()
		}
	}
	want.Fits = len(p.fits)
	m := p.plan.Shop.Minutes
	want.Time = joinery.Time(want.Bits)*m.Bit + joinery.Time(want.Fences)*m.Fence + joinery.Time(want.Heights)*m.Height + joinery.Time(want.Stops)*m.Stop +
		joinery.Time(want.Passes)*m.Pass + joinery.Time(want.Fits)*m.Fit
	got := p.claims.Changes
	for _, c := range []struct {
		what      string
		got, want int
	}{
		{"bits to set", got.Bits, want.Bits}, {"fences to set", got.Fences, want.Fences}, {"heights to set", got.Heights, want.Heights},
		{"stops to set", got.Stops, want.Stops}, {"passes", got.Passes, want.Passes}, {"fits", got.Fits, want.Fits},
	} {
		if c.got != c.want {
			field, _, _ := strings.Cut(c.what, " ")
			p.wrong("changes, "+field, "the deck counts %d %s, it takes %d", c.got, c.what, c.want)
		}
	}
	if got.Time != want.Time {
		p.wrong("changes, minutes", "the deck counts %g minutes, it takes %g", got.Time.Minutes(), want.Time.Minutes())
	}
	p.bound(got)
}

// bound checks that what the deck says of its time agrees with itself. Whether
// another deck would take less, no proof of this one can tell.
func (p *prover) bound(c Changes) {
	switch {
	case c.Bound < 0:
		p.wrong("changes, bound", "the deck says that nothing takes less than %g minutes, which says nothing", c.Bound.Minutes())
	case c.Bound > c.Time:
		p.wrong("changes, bound", "the deck says that nothing takes less than %g minutes, and takes %g itself", c.Bound.Minutes(), c.Time.Minutes())
	case c.Proved && c.Bound < c.Time:
		p.wrong("changes, proved", "the deck is called proved, but by its own bound another could take %g minutes where it takes %g",
			c.Bound.Minutes(), c.Time.Minutes())
	case !c.Proved && c.Bound == c.Time && c.Bound > 0:
		p.wrong("changes, proved", "the deck is not called proved, though it says that nothing takes less than its %g minutes", c.Time.Minutes())
	}
}
