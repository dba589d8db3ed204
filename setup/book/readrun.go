package book

import (
	"slices"
	"strings"
	"sync"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// readRuns reads the runs of an entry. Runs of one piece share it.
func (e *Entry) readRuns(groups []group) {
	pieces := map[pieceKey]*joinery.Piece{}
	cutOf := make([]int, 0, len(groups)) // of each run, the cut of its piece
	e.Setup.Runs, e.Marks = make([]deck.Run, 0, len(groups)), make([]Stood, 0, len(groups))
	for i := range groups {
		g := &groups[i]
		if g.faults.count >= mostDamage {
			return
		}
		before := g.faults.count
		p, cut := g.piece(), g.cut()
		channel, run := g.channel(p.Size, e.Setup.Bit), e.run(g)
		g.recess(&channel)
		g.shaped(cut.Kind, &run, &channel)
		if g.faults.count == before {
			g.check(p, channel, run)
		}
		if g.faults.count > before {
			continue // what follows needs a run that makes sense
		}
		g.span(p.Size, run, &channel)
		cut.In, cut.Width, cut.Depth, cut.Channels = channel.Down, channel.Width, channel.Depth, []joinery.Channel{channel}
		if channel.Recess.Depth > 0 {
			cut.Channels = append(cut.Channels, over(channel))
		}
		cut.Bored = g.oneOf(keyHole, "no", "yes") == "yes"
		cut.Fence.Either = run.Turned || run.Fence != channel.Near
		if same := pieces[keyOf(p)]; same != nil {
			p = same
		} else {
			pieces[keyOf(p)] = p
		}
		cutOf = append(cutOf, join(p, cut))
		r := setup.RunOf(p, cut, channel, run, e.Shop.Scale)
		r.Setup, r.Index, r.Climb = 1, len(e.Setup.Runs)+1, g.count(keyClimb)-1
		r.Raised = g.oneOf(keyRaised, "no", "yes") == "yes"
		if from := g.stood(keyScrew); from != nil {
			r.Screw = &deck.Screw{FromMiddle: *from}
		}
		r.Heights, r.Cap = g.ladder(), g.cap()
		g.rungs(r.Heights, e.Setup.Heights)
		e.Setup.Runs = append(e.Setup.Runs, r)
		e.Marks = append(e.Marks, Stood{Start: g.stood(keyBegan), Stop: g.stood(keyEnded)})
	}
	for i := range e.Setup.Runs {
		r := &e.Setup.Runs[i]
		r.Cut = &r.Piece.Cuts[cutOf[i]]
	}
}

// join puts a cut on a piece, and returns which of its cuts it is: runs of one cut
// bring its channels one by one.
func join(p *joinery.Piece, cut *joinery.Cut) int {
	at := slices.IndexFunc(p.Cuts, func(c joinery.Cut) bool { return c.Name == cut.Name && c.Kind == cut.Kind })
	if at < 0 {
		p.Cuts = append(p.Cuts, *cut)
		return len(p.Cuts) - 1
	}
	whole := &p.Cuts[at]
	for _, ch := range cut.Channels {
		if !slices.ContainsFunc(whole.Channels, func(o joinery.Channel) bool { return o.Part == ch.Part }) {
			whole.Channels = append(whole.Channels, ch)
		}
	}
	for line := range strings.Lines(cut.Note) {
		if !strings.Contains(whole.Note, strings.TrimSpace(line)) {
			whole.Note = strings.TrimPrefix(whole.Note+"\n"+strings.TrimSpace(line), "\n")
		}
	}
	whole.Square = whole.Square || cut.Square
	whole.Fence.Either = whole.Fence.Either || cut.Fence.Either
	return at
}

// pieceKey is what makes two runs' pieces one.
type pieceKey struct {
	name, mirror, wood string
	count              int
	size               joinery.Size
	grain              joinery.Dimension
}

func keyOf(p *joinery.Piece) pieceKey {
	return pieceKey{p.Name, p.MirrorOf, p.Wood.Name, p.Count, p.Size, p.Grain}
}

// piece reads the blank.
func (g *group) piece() *joinery.Piece {
	p := &joinery.Piece{
		Name: g.head.value, Count: g.count(keyCount), MirrorOf: g.words(keyMirror),
		Size: g.size(), Wood: woodNamed(g.words(keyWood)),
	}
	if f, ok := g.one(keyGrain); ok {
		if p.Grain, ok = joinery.ParseDimension(f.value); !ok {
			g.fault(f, "write left-right, front-back or top-bottom", "grain: %q is no dimension", f.value)
		}
	}
	return p
}

// woods is the table by the names that are printed.
var woods = sync.OnceValue(func() map[string]timber.Wood {
	byName := map[string]timber.Wood{}
	for _, w := range timber.Woods() {
		byName[w.Name] = w
	}
	return byName
})

// woodNamed looks a wood up; one the table does not have keeps its name alone.
func woodNamed(name string) timber.Wood {
	if w, ok := woods()[name]; ok {
		return w
	}
	return timber.Wood{Name: name}
}

// size reads the three dimensions of a blank.
func (g *group) size() joinery.Size {
	var size joinery.Size
	f, ok := g.need(keySize, "1 5/8 in left-right, 1 5/8 in front-back, 17 in top-bottom")
	if !ok {
		return size
	}
	for word := range strings.SplitSeq(f.value, ",") {
		word = strings.TrimSpace(word)
		at := strings.LastIndexByte(word, ' ')
		d, ok := joinery.ParseDimension(word[at+1:])
		if !ok || at < 0 {
			g.fault(f, "write 17 in top-bottom, and the other two likewise", "size: %q names no dimension", word)
			return size
		}
		size[d], _ = g.parse(f, word[:at])
	}
	for _, d := range joinery.Dimensions {
		if size[d] <= 0 {
			g.fault(f, "write all three, such as 17 in top-bottom", "the size has no %s", d)
			return size
		}
	}
	return size
}

// cut reads what the cut is called.
func (g *group) cut() *joinery.Cut {
	c := &joinery.Cut{Name: g.words(keyCut), Note: strings.Join(g.notes(), "\n")}
	c.Square = g.oneOf(keyEnds, "round", "square") == "square"
	f, ok := g.need(keyKind, "mortise")
	if !ok {
		return c
	}
	if c.Kind = joinery.KindNamed(f.value); c.Kind == nil {
		g.fault(f, "write "+joinery.KindsThat(func(*joinery.Kind) bool { return true }), "kind: %q is no kind of cut", f.value)
	}
	return c
}

var setbackFrom = pattern.New(`^(.*\S)\s+from\s+(\S+)$`)

// channel reads the walls of the channel; its span follows from the marks.
func (g *group) channel(size joinery.Size, bit *joinery.Bit) joinery.Channel {
	ch := joinery.Channel{Part: g.words(keyPart), Down: g.side(keyDown), Depth: g.needLength(keyDepth, "1 in", 1)}
	if bit.Outline == nil {
		ch.Width = g.needLength(keyWidth, "3/8 in", 1)
	}
	f, ok := g.need(keySetback, "1/2 in from front")
	if !ok {
		return ch
	}
	m := setbackFrom.FindStringSubmatch(f.value)
	if m == nil {
		g.fault(f, "write 1/2 in from front", "the setback names no side")
		return ch
	}
	ch.Near = g.sideOf(f, m[2])
	if ch.Setback, _ = g.parse(f, m[1]); ch.Setback < 0 {
		g.fault(f, "measure from the other side", "the setback is negative")
	}
	return ch
}

// run reads how the work goes over the bit.
func (e *Entry) run(g *group) deck.Step {
	r := deck.Step{Bit: e.Setup.Bit, NearEdge: e.Setup.Fence.NearEdge, Carriage: e.Setup.Carriage, Down: g.side(keyDown), Fence: g.side(keyToFence)}
	r.Position, r.Of = g.position()
	r.Turned = g.oneOf(keyTurned, "no", "yes") == "yes"
	return r
}

// check faults a run that no piece could be run by.
func (g *group) check(p *joinery.Piece, ch joinery.Channel, run deck.Step) {
	leads, _ := g.one(keyLeads)
	down, _ := g.one(keyDown)
	switch want := setup.Leads(run.Fence, run.Down); {
	case want == joinery.NoSide || ch.Near.Dimension() != run.Fence.Dimension():
		g.fault(down, "the side down and the side to the fence must meet, and the setback be measured the same way",
			"the sides of this run do not fit each other")
	case leads.key != "" && leads.value != want.String():
		g.fault(leads, "write "+want.String(), "with the %s down and the %s to the fence the %s leads, not the %s",
			run.Down, run.Fence, want, leads.value)
	case ch.Setback+ch.Width > p.Size.Between(ch.Near), ch.Depth > p.Size.Between(ch.Down):
		g.fault(g.head, "check size, setback, width and depth", "the cut does not lie inside the piece %q", p.Name)
	}
}

// span reads the lines where the cut starts and stops, from the leading end.
func (g *group) span(size joinery.Size, run deck.Step, ch *joinery.Channel) {
	leads := setup.Leads(run.Fence, run.Down)
	length := size.Between(leads)
	a, b := g.length(keyStart), length
	if f, ok := g.one(keyStop); ok {
		b = g.bounded(f, 1)
	}
	if a >= b || b > length {
		g.fault(g.head, "start comes before stop, and both lie on the piece", "the marks of %q cannot be", g.head.value)
	}
	ch.Lo, ch.Hi = a, b
	if leads.High() {
		ch.Lo, ch.Hi = length-b, length-a
	}
}

// rungs faults a height that is not on the setup's ladder.
func (g *group) rungs(heights, ladder []measure.Length) {
	for _, h := range heights {
		if !slices.Contains(ladder, h) {
			f, _ := g.one(keyHeights)
			g.fault(f, "add it to the heights of the setup, or take it away here", "a height of this run is not on the setup's ladder")
			return
		}
	}
}

// cap reads the greatest depth of one pass and its rule.
func (g *group) cap() ladder.Cap {
	f, ok := g.one(keyCap)
	if !ok {
		return ladder.Cap{}
	}
	depth, rule, _ := strings.Cut(f.value, ",")
	if l, ok := area(strings.TrimSpace(depth)); ok {
		return ladder.Cap{Depth: l, Rule: strings.TrimSpace(rule)}
	}
	l, _ := g.parse(f, strings.TrimSpace(depth))
	return ladder.Cap{Depth: max(l, 0), Rule: strings.TrimSpace(rule)}
}
