package proof

import (
	"strconv"

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

// gone is the channel with the deepest floor that another one begins at: of its own
// cut, or of one that the plan wants before it; nil for none.
func gone(w *wanted, of *wantedPiece) *wanted {
	var over *wanted
	deeper := func(channels []wanted, holds func(*joinery.Channel) bool) {
		for i := range channels {
			if c := channels[i].channel; c != w.channel && c.Depth < w.channel.Depth && (over == nil || c.Depth > over.channel.Depth) && holds(c) {
				over = &channels[i]
			}
		}
	}
	deeper(of.cut(w.cut.Name), func(c *joinery.Channel) bool { return holds(c, w.channel) })
	for _, name := range w.piece.WaitsFor(w.cut) {
		deeper(of.cut(name), func(c *joinery.Channel) bool { return leavesNothing(c, w) })
	}
	return over
}

// words name a channel beside another one of the piece.
func (w *wanted) words(beside *wanted) string {
	if w.cut == beside.cut {
		return w.channel.Part
	}
	return w.cut.Kind.Name + " " + strconv.Quote(w.cut.Name)
}

// leavesNothing reports whether a channel takes away all that stands before another
// one, down to its own floor, while some of the side goes on lying on the table.
func leavesNothing(c *joinery.Channel, w *wanted) bool {
	if c.Down != w.channel.Down || c.Section.Outline != nil {
		return false
	}
	size := w.piece.Size
	var first, then [3][2]measure.Length // from where to where, by dimension
	for at, ch := range map[*[3][2]measure.Length]*joinery.Channel{&first: c, &then: w.channel} {
		wall := ch.Setback
		if ch.Near.High() {
			wall = size.Between(ch.Near) - ch.Setback - ch.Width
		}
		at[ch.Near.Dimension()], at[ch.Run()] = [2]measure.Length{wall, wall + ch.Width}, [2]measure.Length{ch.Lo, ch.Hi}
	}
	// A stopped end is round, by half the width at the most between two walls.
	walls, run := first[c.Near.Dimension()], c.Run()
	between := walls[0] > 0 && walls[1] < size[c.Near.Dimension()]
	for end, outermost := range [2]measure.Length{0, size[run]} {
		if first[run][end] == outermost {
			continue
		}
		if !between {
			return false
		}
		first[run][end] += c.Width / 2 * measure.Length(1-2*end)
	}
	bears := false
	for d := range first {
		if joinery.Dimension(d) == c.Down.Dimension() {
			continue
		}
		if then[d][0] < first[d][0] || then[d][1] > first[d][1] {
			return false
		}
		bears = bears || first[d] != [2]measure.Length{0, size[d]}
	}
	return bears
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
			p.wrongRun(w.runs[0].result, "order", 0, "the %s must be cut first, which comes at run %s", over.Part, p.results[other.result].Claimed.Number)
		}
	}
}

// screw checks where the screw goes in its slot: a board moves evenly with its
// moisture, so the screw is as far from the slot's middle as the moisture at
// assembly is from the middle of its year.
func (p *prover) screw(at int, c *Run, w *wanted, of *wantedPiece) {
	want, known := p.screwPlace(w, of)
	switch {
	case p.claims.FromBook:
	case known && c.Screw == nil:
		p.wrongRun(at, "screw", 0, "the run does not say where the screw goes in its slot")
	case !known && c.Screw != nil:
		p.wrongRun(at, "screw", 0, "the run says where a screw goes, and there is none or it cannot be known")
	case known && differ(c.Screw.FromMiddle, want):
		off := c.Screw.FromMiddle - want
		p.wrongRun(at, "screw", off, "the screw would stand %s out of its place in the slot", p.text(off.Abs()))
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
