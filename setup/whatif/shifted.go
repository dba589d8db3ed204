package whatif

import (
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// shifted returns a run's channel as it would be with the fence shifted. The
// first of a cut's runs makes its near wall, the last its far one; a side that
// is open stays open, and a run between the two makes no wall.
func shifted(r *deck.Run, shift measure.Length) (joinery.Channel, bool) {
	size := r.Piece.Size
	ch := r.Channel
	turn := ch.Near != r.Step.Fence
	if turn {
		ch = ch.Reversed(size)
	}
	near, far := ch.Setback, ch.Setback+ch.Width
	if r.Step.Turned {
		// One distance makes both walls, the piece turned between.
		near, far = near-shift, far+shift
	} else {
		if r.Step.Position == 1 && !ch.OpenBeside(ch.Near, size) {
			near += shift
		}
		if r.Step.Position == r.Step.Of && !ch.OpenBeside(ch.Near.Opposite(), size) {
			far += shift
		}
	}
	if near < 0 || near >= far {
		return ch, false
	}
	ch.Setback, ch.Width = near, far-near
	if turn {
		ch = ch.Reversed(size)
	}
	return ch, true
}

// change writes a channel's new walls into a cut, as its kind names them. The
// channel is measured in the run's piece; of a mirror only the sides differ.
func change(p *joinery.Piece, cut *joinery.Cut, r *deck.Run, to joinery.Channel) []Change {
	var changes []Change
	set := func(key string, value *measure.Length, to measure.Length, side joinery.Side) {
		if *value != to {
			word, _ := cut.Places.Word(key)
			changes = append(changes, Change{p.Name, cut.Name, key, *value, to, side, word})
			*value = to
		}
	}
	switch {
	case slices.Contains(cut.Kind.Required, "setback"):
		if cut.Start.Centred {
			cut.Start.Distance = r.Channel.Setback
			if cut.Start.From == joinery.NoSide && len(cut.Channels) > 0 {
				cut.Start.From = cut.Channels[0].Near
			}
			cut.Start.Centred = to.Setback*2+to.Width == p.Size.Between(to.Near)
		}
		set("setback", &cut.Start.Distance, to.Setback, cut.Start.From)
		set("width", &cut.Width, to.Width, joinery.NoSide)
	case slices.Contains(cut.Kind.Required, "length"):
		set("length", &cut.Length, to.Width, joinery.NoSide)
	default:
		set("width", &cut.Width, to.Width, joinery.NoSide)
	}
	return changes
}

// writes reports whether the cut is written at this piece, and not at the one
// that it mirrors.
func writes(plan *joinery.Plan, p *joinery.Piece, cut *joinery.Cut) bool {
	origin := plan.Piece(p.MirrorOf)
	return origin == nil || origin.Cut(cut.Name) == nil
}

// copyOf copies a plan as deep as changes go.
func copyOf(plan *joinery.Plan) *joinery.Plan {
	c := *plan
	c.Pieces = slices.Clone(plan.Pieces)
	for i := range c.Pieces {
		c.Pieces[i].Cuts = slices.Clone(plan.Pieces[i].Cuts)
	}
	return &c
}
