package remark

import (
	"cmp"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// parting is a run that cuts its piece in two, and the runs before it without
// which it would not.
type parting struct {
	run  *deck.Run
	with []*deck.Run
}

// partings finds the runs of one piece that cut it apart, in running order.
// What runs from end to end leaves the same section all along: where that comes
// to more parts than before, one is loose. Cuts that are stopped are not looked
// at, so two that part the wood only together, end to end, are not found.
//
// Where cuts are so many and so much in one another that mostSlices is
// exceeded, whole is false and what comes after is not looked at.
func partings(runs []*deck.Run) (found []parting, whole bool) {
	open := slices.DeleteFunc(slices.Clone(runs), func(r *deck.Run) bool { return !endToEnd(r) })
	slices.SortStableFunc(open, byLastPass)
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
			found = append(found, parting{run: r, with: c.without(r)})
		}
	}
	return found, true
}

// mostSlices bounds the work on a plan that means harm: a section of a piece of
// furniture falls into some ten slices, each time something is cut.
const mostSlices = 2_000_000

func endToEnd(r *deck.Run) bool {
	run, size := r.Channel.Run(), r.Piece.Size
	return r.Channel.OpenAt(run.Low(), size) && r.Channel.OpenAt(run.High(), size)
}

// byLastPass sorts runs by when they are through: those of one climb go up
// together, so that the deeper ends later.
func byLastPass(a, b *deck.Run) int {
	return cmp.Or(cmp.Compare(a.Setup, b.Setup), cmp.Compare(a.Climb, b.Climb),
		cmp.Compare(a.Channel.Depth, b.Channel.Depth), cmp.Compare(a.Index, b.Index))
}

// passage is a run and the room it takes out, with what runs of the same
// channel took out beside it before.
type passage struct {
	*deck.Run
	room solid.Box
}

// roomsOf are the blocks inside the blank that a run takes out, several of a shaped
// edge.
func roomsOf(r *deck.Run) []solid.Box {
	return sweep(r).Boxes(r.Piece.Size)
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

// parts counts the parts a section falls into: it is sliced at every wall, and
// what is left in a slice hangs together with what it overlaps in the next.
func parts(runs []passage) int {
	if len(runs) == 0 {
		return 1
	}
	size, run := runs[0].Piece.Size, runs[0].Channel.Run()
	u, v := (run+1)%3, (run+2)%3
	at := []measure.Length{0, size[u]}
	for _, c := range runs {
		at = append(at, c.room[u].Lo, c.room[u].Hi)
	}
	slices.Sort(at)
	at = slices.Compact(at)
	count := 0
	var before, now []stretch
	for i := range at[1:] {
		var gone []solid.Range
		for _, c := range runs {
			if c.room[u].Lo <= at[i] && c.room[u].Hi >= at[i+1] {
				gone = append(gone, c.room[v])
			}
		}
		now = nil
		for _, left := range remains(gone, size[v]) {
			s := stretch{Range: left, part: new(part)}
			count++
			for _, b := range before {
				if b.And(left).Long() > 0 && s.part.join(b.part) {
					count--
				}
			}
			now = append(now, s)
		}
		before = now
	}
	return count
}

// stretch is wood in one slice of a section, and the part it belongs to.
type stretch struct {
	solid.Range
	part *part
}

// part is one part of a section; what was joined to another points to it.
type part struct{ into *part }

func (p *part) root() *part {
	for p.into != nil {
		p = p.into
	}
	return p
}

// join makes one part of two, and reports whether they were two.
func (p *part) join(q *part) bool {
	p, q = p.root(), q.root()
	if p == q {
		return false
	}
	p.into = q
	return true
}

// remains returns what ranges leave of a length.
func remains(gone []solid.Range, long measure.Length) []solid.Range {
	slices.SortFunc(gone, func(a, b solid.Range) int { return cmp.Compare(a.Lo, b.Lo) })
	var left []solid.Range
	reached := measure.Length(0)
	for _, g := range append(gone, solid.Range{Lo: long, Hi: long}) {
		if g.Lo > reached {
			left = append(left, solid.Range{Lo: reached, Hi: g.Lo})
		}
		reached = max(reached, g.Hi)
	}
	return left
}
