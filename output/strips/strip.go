package strips

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// strip is what is cut out and stuck along the fence for one setup, or, where
// its marks lie too close together to be labelled on one, for some of its
// runs. Places along it are in millimetres from the bit's centre, the infeed
// side positive; it is drawn at full size.
type strip struct {
	s     maker
	u     *deck.Setup
	runs  []deck.Run
	marks []deck.FenceMark
	part  [2]int // which of how many strips of the setup

	radius paper.Paper // of the bit
	column paper.Paper // half the width kept free about the bit
	wide   paper.Paper // the width of a whole tile
	labels lettering   // of the marks
	tells  bool        // the heads say from which edges lengths are
	tags   []*tag
	tiles  []tile
	heads  []paper.Block // the tiles' heads
	high   paper.Paper   // of all tiles
}

// beyondBit is how far the faces of the fence stay clear of the bit where they
// open for it (common practice: as close as can be).
const beyondBit paper.Paper = 3

// stripsOf makes a setup's strips, none where no cut has a mark, to be drawn
// in tiles of a width and no higher than high. Each takes as many runs as its
// labels leave room for. There is an error where the paper has no room beside
// the bit.
func (s maker) stripsOf(u *deck.Setup, shop *joinery.Shop, wide, high paper.Paper) ([]strip, error) {
	var marked []deck.Run
	for _, r := range u.Runs {
		// The edges of a bit that shapes an edge lie in the fence: a strip could not be set by them.
		if (r.Start != nil || r.Stop != nil) && !r.Fades() {
			marked = append(marked, r)
		}
	}
	if len(marked) == 0 {
		return nil, nil
	}
	for _, l := range letterings {
		if all := s.newStrip(u, marked, shop, wide, l); all.lay(high) {
			return []strip{all}, nil
		}
	}
	var shares [][]deck.Run
	for len(marked) > 0 {
		n := sort.Search(len(marked), func(n int) bool {
			st := s.newStrip(u, marked[:n+1], shop, wide, closest)
			st.part = [2]int{len(u.Runs), len(u.Runs)} // as long a name as any
			return !st.lay(high)
		})
		if n == 0 {
			return nil, fmt.Errorf("setup %d: the paper has no room for a strip beside a bit of %s; a larger paper would be right",
				u.Number, s.Scale.Format(u.Bit.True()))
		}
		shares, marked = append(shares, marked[:n]), marked[n:]
	}
	strips := make([]strip, len(shares))
	for i, runs := range shares {
		strips[i] = s.newStrip(u, runs, shop, wide, closest)
		strips[i].part = [2]int{i + 1, len(shares)}
		strips[i].lay(high)
	}
	return strips, nil
}

// lettering is how the labels of marks are set.
type lettering struct {
	high  paper.Paper
	terse bool // only what the mark is and its length
}

// letterings are the ways to set labels, read from where the operator stands
// where there is room.
var (
	closest    = lettering{3.5, true}
	letterings = []lettering{{5, false}, {3.5, false}, closest}
)

func (s maker) newStrip(u *deck.Setup, runs []deck.Run, shop *joinery.Shop, wide paper.Paper, labels lettering) strip {
	st := strip{s: s, u: u, runs: runs, marks: deck.FenceMarks(runs, shop), wide: wide, labels: labels}
	st.radius = paper.Paper(u.Bit.True().Millimetres() / 2)
	st.column = st.radius + beyondBit + 1
	st.tags = st.bitTags()
	for i := range st.marks {
		st.tags = append(st.tags, st.markTag(&st.marks[i]))
	}
	slices.SortStableFunc(st.tags, func(a, b *tag) int { return compare(a.at, b.at) })
	return st
}

func compare(a, b paper.Paper) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// labelWidth is the widest a label may be: beside the bit there must be room
// for one on either side.
func (st *strip) labelWidth() paper.Paper {
	return min(60, st.wide/2-st.column-besides-2*tileEdge)
}

// leastLabel is the width that a label needs if its words are to stay whole.
const leastLabel paper.Paper = 30

// bitTags label the bit and the fold lines.
func (st *strip) bitTags() []*tag {
	var tags []*tag
	add := func(at paper.Paper, left bool, text string) {
		label := paper.Phrase{}.Say(st.s.Letters(paper.Least), text).Set(st.labelWidth())
		tags = append(tags, &tag{at: at, left: left, level: true, label: label})
	}
	add(-st.radius-beyondBit, true, "fold")
	add(-st.radius, true, "trailing edge")
	add(0, false, "bit centre")
	add(st.radius, false, "leading edge")
	add(st.radius+beyondBit, false, "fold")
	return tags
}

// markTag labels a mark with what it is, its runs, and the end of the work it
// is for with its distance from the edge of the bit.
func (st *strip) markTag(m *deck.FenceMark) *tag {
	name, mark := "START", m.Runs[0].Start
	switch {
	case m.Stop:
		name, mark = "STOP", m.Runs[0].Stop
	case m.Back:
		name = "BACK STOP"
	}
	guide, length := "layout line", mark.Line
	switch m.Guide {
	case deck.ByLead:
		guide, length = "leading end", mark.LeadPastEdge
	case deck.ByTail:
		guide, length = "tail end", mark.TailBeforeEdge
	}
	cards, small := st.s.Bold(st.labels.high), st.s.Letters(max(paper.Least, st.labels.high/math.Sqrt2))
	what := badge(name, cards, !m.Stop)
	by := paper.Phrase{}.Say(small, guide).Count(st.s.Number(small, length))
	switch {
	case st.labels.terse:
	case m.Back:
		by = by.Say(small, "from TRAILING edge")
	case m.Guide == deck.ByTail && !m.Stop:
		by = paper.Phrase{}.Say(small, "BACK STOP for").Say(small, guide).Count(st.s.Number(small, length)).Say(small, "from TRAILING edge")
	case m.Guide == deck.ByLead && m.Stop && st.s.Blocks:
		by = paper.Phrase{}.Say(small, "FRONT STOP for").Say(small, guide).Count(st.s.Number(small, length)).Say(small, "from LEADING edge")
	}
	label, w := what, st.labelWidth()
	if !st.labels.terse {
		by = slices.Concat(by, st.stopsBeyond(m, small))
	}
	numbers := paper.Phrase{}.Say(cards, letters(m.Runs))
	label.Beside(slices.Concat(numbers, by).Set(st.s.Page.H), besides)
	if label.W > w {
		label = what
		label.Beside(numbers.Set(w-what.W-besides), besides)
		below := by.Set(w)
		right := paper.Paper(0)
		if m.At < 0 { // the lines end at their leader
			right = label.W - below.W
		}
		label.Add(below, max(0, right), label.H)
	}
	return &tag{at: paper.Paper(m.At.Millimetres()), left: m.At < 0, stop: m.Stop, label: label}
}

// stopsBeyond says where the back stops of drops at a mark stand that the fence
// does not reach, so that the strip has no line for them.
func (st *strip) stopsBeyond(m *deck.FenceMark, l paper.Letters) paper.Phrase {
	var far []*deck.Run
	for _, r := range m.Runs {
		if m.Stop || m.Back || m.Guide == deck.ByTail || !r.StopOffFence(false, st.s.Reach) {
			continue
		}
		if !slices.ContainsFunc(far, func(q *deck.Run) bool { return q.Start.TailBeforeEdge == r.Start.TailBeforeEdge }) {
			far = append(far, r)
		}
	}
	var beyond paper.Phrase
	for _, r := range far {
		beyond = beyond.Say(l, "- back stop").Count(st.s.Number(l, r.Start.TailBeforeEdge)).Say(l, "off the fence")
		if len(far) > 1 {
			beyond = beyond.Say(l, "("+letters([]*deck.Run{r})+")")
		}
	}
	return beyond
}

// badge sets a word on a black ground or in a frame, so that a start differs
// from a stop as its filled triangle does from the hollow one.
func badge(word string, l paper.Letters, black bool) paper.Block {
	l.White = black
	rise, drop := paper.Ascender*paper.Em(l.Height), paper.Descender*paper.Em(l.Height)
	w := l.Width(word) + 2*besides
	return paper.Figure("text", w, rise+drop, func(c paper.Canvas, at paper.Point) {
		ground := paper.Box{X: at.X, Y: at.Y + rise - l.Height - besides, W: w, H: l.Height + 2*besides}
		if black {
			c.Fill(paper.Black, ground.Path()...)
		} else {
			c.Stroke(paper.Thin, ground.Inset(paper.Thin.Width/2).Path()...)
		}
		c.Text(at.Add(besides, rise), l, word)
	})
}

// letters are the pairs of marks that some runs need, each with its setup,
// "3A, 3C": old tape stays on a fence that has moved.
func letters(runs []*deck.Run) string {
	var all []string
	for _, r := range runs {
		if name := fmt.Sprint(r.Setup) + r.Pair; !slices.Contains(all, name) {
			all = append(all, name)
		}
	}
	return strings.Join(all, ", ")
}

// lay divides the strip into tiles no higher than high and finds room for
// every label. It reports whether there was.
func (st *strip) lay(high paper.Paper) bool {
	if st.labelWidth() < leastLabel {
		return false
	}
	fit := func(f fit) bool { return st.layTiles(f, high) }
	if st.tells = st.labels.terse; st.tells && slices.ContainsFunc(fits, fit) {
		return true
	}
	st.tells = false
	return slices.ContainsFunc(fits, fit)
}

func (st *strip) layTiles(f fit, high paper.Paper) bool {
	room := st.divide(f)
	st.heads, st.high = nil, 0
	for i, t := range st.tiles {
		head := st.headOf(t, i)
		st.heads = append(st.heads, head)
		rows, ok := st.arrange(t, min(mostRows, high-besidesRows-head.H))
		st.high = max(st.high, besidesRows+head.H+rows)
		room = room && ok
	}
	return room
}

// arrange finds room for the labels of one tile, in rows no higher than most,
// and returns how high they are.
func (st *strip) arrange(t tile, most paper.Paper) (rows paper.Paper, room bool) {
	var left, right []*tag
	for _, g := range t.tags {
		if g.left {
			left = append(left, g)
		} else {
			right = append(right, g)
		}
	}
	slices.Reverse(left)
	from, to := t.from+tileEdge, t.To-tileEdge
	room = arrangeLeft(left, from, min(to, -st.column), most)
	room = arrange(right, max(from, st.column), to, most) && room
	for _, g := range append(left, right...) {
		rows = max(rows, g.rise+g.label.H)
	}
	return rows, room
}
