package proof

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckcode"
	"fencecard/setup/ladder"
)

// Deck turns claims that prove back into a deck of their plan, with everything
// but what is remarked of it. Setups of a bit and runs that the plan knows nothing
// of are left out.
func Deck(plan *joinery.Plan, claims *Claims) *deck.Deck {
	p := newProver(plan, claims)
	is := claims.Changes
	d := &deck.Deck{Plan: plan, Changes: deck.Changes{
		Bits: is.Bits, Fences: is.Fences, Heights: is.Heights, Stops: is.Stops, Passes: is.Passes, Fits: is.Fits,
		Time: is.Time, Bound: is.Bound, Proved: is.Proved,
	}}
	stood := map[*joinery.Channel]measure.Length{} // the fence, at the run before
	for i := range claims.Setups {
		from := &claims.Setups[i]
		s := deck.Setup{Number: from.Number, Bit: p.bits[from.Bit.Name], Fence: from.Fence, Heights: from.Heights, Carriage: from.Carriage, Kept: from.Kept}
		if s.Bit == nil {
			continue
		}
		for j := range from.Runs {
			c := &from.Runs[j]
			if w := p.wants.find(c); w != nil {
				r := p.runBack(c, w, &s, j+1)
				if w.channel.Section.Shaped() {
					r.Step.Before, stood[w.channel] = stood[w.channel], r.Step.NearEdge
				}
				s.Runs = append(s.Runs, r)
			}
		}
		d.Setups = append(d.Setups, s)
	}
	for i := range d.Setups {
		d.Setups[i].PairUp(&plan.Shop)
	}
	deckcode.Seal(d)
	return d
}

func (p *prover) runBack(c *Run, w *wanted, s *deck.Setup, index int) deck.Run {
	t := onTable(c, s.Fence, w, s.Bit)
	a, b := t.lines(w.channel)
	channel := *w.channel
	if over := gone(w, p.wants.named[w.piece.Name]); over != nil {
		channel.Recess.Depth = over.channel.Depth // it goes on from there
	}
	return deck.Run{
		Setup: s.Number, Index: index, Climb: max(0, c.Climb-1),
		Piece: w.piece, Cut: w.cut, Channel: channel,
		Step: deck.Step{Bit: s.Bit, NearEdge: s.Fence.NearEdge, Down: c.Down, Fence: c.Fence,
			Position: c.Position, Of: c.Positions, Turned: c.Turned, Carriage: s.Carriage},
		Leads: c.Leads, Length: t.long, A: a, B: b,
		Begin: c.Begin, End: c.End, Start: c.Start, Stop: c.Stop, Pivot: c.Pivot,
		Guided: c.Guided, Nibble: c.Nibble, Hole: c.Hole, Raised: c.Raised, Screw: c.Screw,
		Heights: c.Heights, Cap: ladder.CapFor(s.Bit, w.piece.Wood, &p.plan.Shop),
	}
}
