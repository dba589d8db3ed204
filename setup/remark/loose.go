package remark

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// parting is a card that cuts its piece in two, and the cards before it without
// which it would not.
type parting struct {
	card *deck.Run
	with []*deck.Run
}

// partings finds the cards of one piece that cut it apart, in running order.
// What runs from end to end leaves the same section all along: where that comes
// to more parts than before, one is loose. Cuts that are stopped are not looked
// at, so two that part the wood only together, end to end, are not found.
func partings(runs []*deck.Run) []parting {
	open := slices.DeleteFunc(slices.Clone(runs), func(r *deck.Run) bool { return !endToEnd(r) })
	slices.SortStableFunc(open, byLastPass)
	inOrder := make([]passage, len(open))
	for i, r := range open {
		inOrder[i] = passage{r, roomOf(r)}
	}
	var found []parting
	for i, c := range inOrder {
		with := touching(c, inOrder[:i])
		if len(with) == 0 && c.Channel.Depth < c.Piece.Size.Between(c.Channel.Down) || len(with) > mostTouching {
			continue
		}
		if parts(append(slices.Clone(with), c)) > parts(with) {
			p := parting{card: c.Run}
			for _, w := range with {
				p.with = append(p.with, w.Run)
			}
			found = append(found, p)
		}
	}
	return found
}

// mostTouching bounds the work on a plan that means harm: no piece of furniture
// has so many cuts in one another.
const mostTouching = 100

func endToEnd(r *deck.Run) bool {
	run, size := r.Channel.Run(), r.Piece.Size
	return r.Channel.OpenAt(run.Low(), size) && r.Channel.OpenAt(run.High(), size)
}

// byLastPass sorts cards by when they are through: those of one climb go up
// together, so that the deeper ends later.
func byLastPass(a, b *deck.Run) int {
	return cmp.Or(cmp.Compare(a.Setup, b.Setup), cmp.Compare(a.Climb, b.Climb),
		cmp.Compare(a.Channel.Depth, b.Channel.Depth), cmp.Compare(a.Index, b.Index))
}

// passage is a card and the room it takes out.
type passage struct {
	*deck.Run
	room solid.Box
}

// roomOf is the block inside the blank that a card takes out.
func roomOf(r *deck.Run) solid.Box {
	return solid.Run(r.Channel, r.Piece.Size, r.Step.Bit.True(), r.Step.Fence, r.Step.NearEdge).Box(r.Piece.Size)
}

// touching returns those of the earlier cards along the same way whose room
// touches a card's, themselves or through others of them.
func touching(c passage, earlier []passage) []passage {
	var with []passage
	seen := make([]bool, len(earlier))
	for next := []passage{c}; len(next) > 0 && len(with) <= mostTouching; next = next[1:] {
		for i := range earlier {
			e := &earlier[i]
			if seen[i] || apart(&next[0].room, &e.room) || e.Channel.Run() != c.Channel.Run() {
				continue
			}
			seen[i] = true
			with, next = append(with, *e), append(next, *e)
			if len(with) > mostTouching {
				break
			}
		}
	}
	return with
}

// takenApart reports whether there is wood between two rooms.
func apart(a, b *solid.Box) bool {
	return a[0].Gap(b[0]) > 0 || a[1].Gap(b[1]) > 0 || a[2].Gap(b[2]) > 0
}

// parts counts the parts a section falls into: it is sliced at every wall, and
// what is left in a slice hangs together with what it overlaps in the next.
func parts(cards []passage) int {
	if len(cards) == 0 {
		return 1
	}
	size, run := cards[0].Piece.Size, cards[0].Channel.Run()
	u, v := (run+1)%3, (run+2)%3
	at := []joinery.Length{0, size[u]}
	for _, c := range cards {
		at = append(at, c.room[u].Lo, c.room[u].Hi)
	}
	slices.Sort(at)
	at = slices.Compact(at)
	count := 0
	var before, now []stretch
	for i := range at[1:] {
		var gone []solid.Range
		for _, c := range cards {
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
func remains(gone []solid.Range, long joinery.Length) []solid.Range {
	slices.SortFunc(gone, func(a, b solid.Range) int { return cmp.Compare(a.Lo, b.Lo) })
	var left []solid.Range
	reached := joinery.Length(0)
	for _, g := range append(gone, solid.Range{Lo: long, Hi: long}) {
		if g.Lo > reached {
			left = append(left, solid.Range{Lo: reached, Hi: g.Lo})
		}
		reached = max(reached, g.Hi)
	}
	return left
}
