package proof

import "fencecard/joinery"

// order checks that no cut is made before those it must wait for.
func (p *prover) order() {
	type name struct{ piece, cut string }
	last := map[name]*run{}
	for _, w := range p.wanted {
		for i := range w.runs {
			r, n := &w.runs[i], name{w.piece.Name, w.cut.Name}
			if last[n] == nil || r.result > last[n].result {
				last[n] = r
			}
		}
	}
	for _, w := range p.wanted {
		for _, after := range w.cut.After {
			other := last[name{w.piece.Name, after}]
			if other == nil || len(w.runs) == 0 || p.later(w.runs[0], *other) {
				continue
			}
			p.wrongCard(w.runs[0].result, "order", 0, "the plan wants this cut after %q, which is run at card %s",
				after, p.results[other.result].Card.Number)
		}
	}
}

// later reports whether one run is made when another is finished. Between
// marks all cards of a setup go through at each height in turn; between blocks
// only those of one climb do.
func (p *prover) later(r, other run) bool {
	if p.plan.Shop.Stops != joinery.Blocks || r.setup != other.setup {
		return r.setup > other.setup
	}
	a, b := p.results[r.result].Card, p.results[other.result].Card
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
	}
	m := p.plan.Shop.Minutes
	want.Time = joinery.Time(want.Bits)*m.Bit + joinery.Time(want.Fences)*m.Fence + joinery.Time(want.Heights)*m.Height + joinery.Time(want.Stops)*m.Stop
	got := p.claims.Changes
	for _, c := range []struct {
		field     string
		got, want int
	}{{"bits", got.Bits, want.Bits}, {"fences", got.Fences, want.Fences}, {"heights", got.Heights, want.Heights}, {"stops", got.Stops, want.Stops}} {
		if c.got != c.want {
			p.wrong("changes, "+c.field, "the deck counts %d %s to set, it takes %d", c.got, c.field, c.want)
		}
	}
	if got.Time != want.Time {
		p.wrong("changes, minutes", "the deck counts %g minutes for the changes, they take %g", got.Time.Minutes(), want.Time.Minutes())
	}
}
