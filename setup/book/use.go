package book

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/setup"
)

// Use is what it takes to cut a setup's joints at a kept fence distance.
type Use struct {
	Changes []Change // in the plan, the pieces in its order
	Refused []string // why the joint does not allow it; none: it does
	Beware  []string // what the plan so changed is warned of, and was not before
}

// Allowed reports whether the joints allow it.
func (u *Use) Allowed() bool { return len(u.Refused) == 0 }

// Change is one value of the plan that would have to be another.
type Change struct {
	Piece, Cut string
	Key        string // "setback", "width" or "length"
	From, To   joinery.Length
	Side       joinery.Side // of a setback: where it is measured from
}

// useAt finds out whether the joints of a setup can be cut with the fence
// shifted: it makes the changes in a copy of the plan and a deck of that, so
// the rules of the joints are those that hold for every plan.
func useAt(d *setup.Deck, s *setup.Setup, shift joinery.Length) *Use {
	u := &Use{}
	plan := copyOf(d.Plan)
	moved := map[[2]string]bool{}
	for i := range s.Cards {
		c := &s.Cards[i]
		to, ok := shifted(c, shift)
		if !ok {
			u.refuse("%s, %s: nothing would be left of the cut", c.Piece.Name, c.Cut.Name)
			continue
		}
		for k := range plan.Pieces {
			p := &plan.Pieces[k]
			cut := p.Cut(c.Cut.Name)
			if cut == nil || !sameFamily(p, c.Piece) || moved[[2]string{p.Name, cut.Name}] {
				continue
			}
			moved[[2]string{p.Name, cut.Name}] = true
			changes := change(p, cut, c, to)
			if writes(plan, p, cut) {
				u.Changes = append(u.Changes, changes...)
			}
			for _, f := range cut.Lay(p, plan.Shop.Scale) {
				u.refuse("%s", f.Problem)
			}
		}
	}
	if u.Allowed() {
		u.try(d, plan, s, shift)
	}
	return u
}

func (u *Use) refuse(format string, args ...any) {
	if why := fmt.Sprintf(format, args...); !slices.Contains(u.Refused, why) {
		u.Refused = append(u.Refused, why)
	}
}

// try makes a deck of the changed plan and looks what has become of the setup.
func (u *Use) try(d *setup.Deck, plan *joinery.Plan, s *setup.Setup, shift joinery.Length) {
	after, err := setup.Make(plan)
	if err != nil {
		if faults, ok := err.(joinery.Faults); ok {
			for _, f := range faults {
				u.refuse("%s", f.Problem)
			}
			return
		}
		u.refuse("%v", err)
		return
	}
	for i := range s.Cards {
		if c := &s.Cards[i]; !runAt(after, c, s.Fence.NearEdge+shift) {
			u.refuse("%s, %s: the cut would no longer be made at this fence distance", c.Piece.Name, c.Cut.Name)
		}
	}
	before := map[string]bool{}
	for _, w := range d.Warnings {
		before[w.Text] = true
	}
	for _, w := range after.Warnings {
		if !before[w.Text] {
			u.Beware = append(u.Beware, w.Text)
		}
	}
}

// runAt reports whether a deck runs a card's cut with the same bit and with the
// fence at that distance, in no more runs than it took.
func runAt(d *setup.Deck, c *setup.Card, near joinery.Length) bool {
	for i := range d.Setups {
		s := &d.Setups[i]
		if s.Fence.NearEdge != near || !sameBit(s.Bit, c.Run.Bit) {
			continue
		}
		for k := range s.Cards {
			o := &s.Cards[k]
			if o.Piece.Name == c.Piece.Name && o.Cut.Name == c.Cut.Name && o.Channel.Part == c.Channel.Part && o.Run.Of <= c.Run.Of {
				return true
			}
		}
	}
	return false
}

// shifted returns a card's channel as it would be with the fence shifted. The
// first of a cut's runs makes its near wall, the last its far one; a side that
// is open stays open, and a run between the two makes no wall.
func shifted(c *setup.Card, shift joinery.Length) (joinery.Channel, bool) {
	size := c.Piece.Size
	ch := c.Channel
	turn := ch.Near != c.Run.Fence
	if turn {
		ch = ch.Reversed(size)
	}
	near, far := ch.Setback, ch.Setback+ch.Width
	if c.Run.Turned {
		// One distance makes both walls, the piece turned between.
		near, far = near-shift, far+shift
	} else {
		if c.Run.Position == 1 && !ch.OpenBeside(ch.Near, size) {
			near += shift
		}
		if c.Run.Position == c.Run.Of && !ch.OpenBeside(ch.Near.Opposite(), size) {
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
// channel is measured in the card's piece; of a mirror only the sides differ.
func change(p *joinery.Piece, cut *joinery.Cut, c *setup.Card, to joinery.Channel) []Change {
	var changes []Change
	set := func(key string, value *joinery.Length, to joinery.Length, side joinery.Side) {
		if *value != to {
			changes = append(changes, Change{p.Name, cut.Name, key, *value, to, side})
			*value = to
		}
	}
	switch {
	case slices.Contains(cut.Kind.Required, "setback"):
		if cut.Start.Centred {
			cut.Start.Distance = c.Channel.Setback
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

// sameFamily reports whether two pieces are one, or mirrors of one: their cuts
// are written once.
func sameFamily(a, b *joinery.Piece) bool {
	origin := func(p *joinery.Piece) string {
		if p.MirrorOf != "" {
			return p.MirrorOf
		}
		return p.Name
	}
	return origin(a) == origin(b)
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
