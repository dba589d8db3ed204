// Package loose finds the runs that cut a piece in two, so that a part of it comes
// loose beside the turning bit.
package loose

import (
	"slices"

	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// Parting is a run that cuts its piece in two, and the runs before it without
// which it would not.
type Parting struct {
	Run  *deck.Run
	With []*deck.Run
}

// Partings finds the runs of one piece that cut it apart, in running order.
// What runs from end to end leaves the same section all along: where that comes
// to more parts than before, one is loose. Cuts that are stopped are not looked
// at, so two that part the wood only together, end to end, are not found.
//
// Where cuts are so many and so much in one another that mostSlices is
// exceeded, whole is false and what comes after is not looked at.
func Partings(runs []*deck.Run) (found []Parting, whole bool) {
	open := slices.DeleteFunc(slices.Clone(runs), func(r *deck.Run) bool { return !r.Channel.EndToEnd(r.Piece.Size) })
	slices.SortStableFunc(open, deck.ByLastPass)
	var all [3][]*cavity // by the way they run
	work := 0
	for _, r := range open {
		run := r.Channel.Run()
		var c *cavity
		deepened := false
		for _, room := range roomsOf(r) {
			c, all[run] = gather(passage{r, room}, all[run])
			all[run] = append(all[run], c)
			deepened = deepened || c.deepened
		}
		if !deepened {
			continue
		}
		if work += c.slices(); work > mostSlices {
			return found, false
		}
		before := c.parts
		if c.parts = parts(c.passages); c.parts > before {
			found = append(found, Parting{Run: r, With: c.without(r)})
		}
	}
	return found, true
}

// mostSlices bounds the work on a plan that means harm: a section of a piece of
// furniture falls into some ten slices, each time something is cut.
const mostSlices = 2_000_000

// passage is a run and the room it takes out, with what runs of the same
// channel took out beside it before.
type passage struct {
	*deck.Run
	room solid.Box
}

// roomsOf are the blocks inside the blank that a run takes out, several of a shaped
// edge.
func roomsOf(r *deck.Run) []solid.Box {
	return Room(r).Boxes(r.Piece.Size)
}

// Room is the room that a run takes out; an end that is nibbled is taken whole.
func Room(r *deck.Run) solid.Hollow {
	size, d := r.Piece.Size, r.Step.Bit.True()
	if r.Nibble != nil {
		return solid.Of(r.Channel, size, d)
	}
	h := solid.Run(r.Channel, size, d, r.Step.Fence, r.Step.NearEdge)
	h.Section = deck.SectionAt(r.Step, r.Channel)
	return h
}

// cavity is rooms along one way that touch, themselves or through others. What
// it leaves of the section is its own affair: two cavities with wood between
// them part it as each does alone.
type cavity struct {
	passages []passage
	box      solid.Box // around them all
	parts    int       // that the section falls into where it is all that is cut
	deepened bool      // the last run may have parted the wood
}

// gather puts a passage into the cavity it touches, joining those it touches
// together, and returns that and the others.
func gather(p passage, all []*cavity) (c *cavity, others []*cavity) {
	c = &cavity{box: p.room, parts: 1}
	others = slices.DeleteFunc(all, func(o *cavity) bool {
		if !o.touches(&p.room) {
			return false
		}
		c.passages = append(c.passages, o.passages...)
		c.box = around(c.box, o.box)
		c.parts += o.parts - 1
		return true
	})
	c.deepened = c.add(p) && !c.floored()
	return c, others
}

// without lists a run of each room but the one that was opened by a run.
func (c *cavity) without(r *deck.Run) []*deck.Run {
	var with []*deck.Run
	for _, p := range c.passages {
		if p.Run != r {
			with = append(with, p.Run)
		}
	}
	return with
}

func (c *cavity) touches(room *solid.Box) bool {
	return !apart(&c.box, room) && slices.ContainsFunc(c.passages, func(p passage) bool { return !apart(&p.room, room) })
}

// add takes a passage in and reports whether it takes out any wood. Beside the
// room of its own channel it makes that room wider, as both begin at one side
// and are as deep.
func (c *cavity) add(p passage) bool {
	for i := range c.passages {
		e := &c.passages[i]
		switch {
		case e.room.And(p.room) == p.room:
			return false
		case e.Cut == p.Cut && e.Channel == p.Channel && !p.Channel.Section.Shaped() && !apart(&e.room, &p.room):
			e.room = around(e.room, p.room)
			return true
		}
	}
	c.passages = append(c.passages, p)
	return true
}

// floored reports whether wood is left below all of it on one side, which holds
// together whatever stands up from it.
func (c *cavity) floored() bool {
	first := c.passages[0]
	return !slices.ContainsFunc(c.passages, func(p passage) bool {
		return p.Channel.Down != first.Channel.Down || p.Channel.Depth == p.Piece.Size.Between(p.Channel.Down)
	})
}

// slices counts what parts has to look at.
func (c *cavity) slices() int { return 2 * len(c.passages) * len(c.passages) }

// around is the block around two.
func around(a, b solid.Box) solid.Box {
	for d := range a {
		a[d] = solid.Range{Lo: min(a[d].Lo, b[d].Lo), Hi: max(a[d].Hi, b[d].Hi)}
	}
	return a
}

// apart reports whether there is wood between two rooms.
func apart(a, b *solid.Box) bool {
	return a[0].Gap(b[0]) > 0 || a[1].Gap(b[1]) > 0 || a[2].Gap(b[2]) > 0
}
