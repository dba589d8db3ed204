package proof

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// overIt is the deepest channel of the same cut that another one lies wholly
// inside of, entered from the same side and less deep; nil for none. It is cut
// first, and in its room nothing is left to cut.
func overIt(w *wanted, of *wantedPiece) *joinery.Channel {
	var over *joinery.Channel
	for _, other := range of.cut(w.cut.Name) {
		if c := other.channel; c != w.channel && holds(c, w.channel) && (over == nil || c.Depth > over.Depth) {
			over = c
		}
	}
	return over
}

// holds reports whether the walls of one channel stand round those of another
// that goes deeper.
func holds(wide, deep *joinery.Channel) bool {
	return wide.Down == deep.Down && wide.Near == deep.Near && wide.Depth < deep.Depth &&
		wide.Setback <= deep.Setback && wide.Setback+wide.Width >= deep.Setback+deep.Width &&
		wide.Lo <= deep.Lo && wide.Hi >= deep.Hi
}

// shankEnters reports whether the shank of a bit has room in the channel over
// its own, so that only what is below that needs teeth.
func shankEnters(bit *joinery.Bit, deep measure.Length, over, ch *joinery.Channel) bool {
	if over == nil || bit.Shank == 0 || deep-over.Depth > bit.Cutting {
		return false
	}
	// The bit's axis goes from end to end of the narrow one, and takes the shank along.
	room := bit.True()/2 - bit.Shank/2 - joinery.ShankRoom
	return (over.Width-bit.Shank)/2 >= joinery.ShankRoom && ch.Lo+room >= over.Lo && ch.Hi-room <= over.Hi
}

// recessFirst checks that a channel is cut after the one it lies inside of.
func (p *prover) recessFirst(w *wanted, of *wantedPiece) {
	over := overIt(w, of)
	if over == nil || len(w.runs) == 0 {
		return
	}
	channels := of.cut(w.cut.Name)
	for i := range channels {
		if channels[i].channel != over {
			continue
		}
		if other := last(channels[i : i+1]); other != nil && !p.later(w.runs[0], *other) {
			p.wrongCard(w.runs[0].result, "order", 0, "the %s must be cut first, which is run at card %s", over.Part, p.results[other.result].Card.Number)
		}
	}
}

// screw checks where the screw goes in its slot: a board moves evenly with its
// moisture, so the screw is as far from the slot's middle as the moisture at
// assembly is from the middle of its year.
func (p *prover) screw(at int, c *Card, w *wanted, of *wantedPiece) {
	want, known := p.screwPlace(w, of)
	switch {
	case p.claims.FromBook:
	case known && c.Screw == nil:
		p.wrongCard(at, "screw", 0, "the card does not say where the screw goes in its slot")
	case !known && c.Screw != nil:
		p.wrongCard(at, "screw", 0, "the card says where a screw goes, and there is none or it cannot be known")
	case known && differ(c.Screw.FromMiddle, want):
		off := c.Screw.FromMiddle - want
		p.wrongCard(at, "screw", off, "the screw would stand %s out of its place in the slot", p.text(off.Abs()))
	}
}

func (p *prover) screwPlace(w *wanted, of *wantedPiece) (measure.Length, bool) {
	if w.cut.Slot == nil || overIt(w, of) == nil || w.cut.Slot.Move.Whole > 0 {
		return 0, false
	}
	m := w.cut.Slot.Move
	dry, damp, err := m.Climate.Moistures()
	whole, err2 := m.Over(w.piece.Wood)
	if now := m.Climate.Assembly; now > 0 && err == nil && err2 == nil {
		dry, damp = min(dry, now), max(damp, now)
		return p.plan.Shop.Scale.Round(measure.FromMillimetres(whole.Millimetres() * ((now-dry)/(damp-dry) - 0.5))), true
	}
	return 0, false
}
