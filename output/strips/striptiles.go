package strips

import (
	"math"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/output/paper"
)

// tile is a part of a strip that fits on the paper. One has the bit; every
// other stands by its rule line, a round distance from an edge of the bit, so
// that no paper is spent on the way there.
type tile struct {
	from, To paper.Paper // along the strip
	tags     []*tag      // labelled on it, from left to right
	rule     *rule       // nil on the tile with the bit
}

// rule is where a tile without the bit is set: its line lies that far from an
// edge of the bit.
type rule struct {
	*tag
	distance measure.Length
	leading  bool // from the leading edge, else from the trailing one
}

// Measures of tiles.
const (
	tileEdge  paper.Paper = 3.5 // from the edge of a tile to its labels
	headRoom  paper.Paper = 60  // for the strip's name beside the bit
	markEdge  paper.Paper = 3   // from the edge of a tile to the nearest mark labelled on it
	ruleEdge  paper.Paper = 10  // from the edge of a tile to its rule line, where there is room
	ruleClear paper.Paper = 4   // from a rule line to the nearest mark
)

// shows reports whether a place is on this tile. Every mark there is drawn,
// also one that is labelled on a neighbour that lies a little over it.
func (t tile) shows(at paper.Paper) bool { return at >= t.from && at <= t.To }

// fit is how much of the paper a tile takes.
type fit uint8

// The fits, in the order they are tried: no longer than its labels need, as
// long as the paper, and as long as that with the bit in its middle.
const (
	snugly fit = iota
	loosely
	centred
)

var fits = []fit{snugly, loosely, centred}

// divide cuts the strip into tiles. Where it needs more than one, the bit is
// in the middle of its own; marks beyond it have tiles with rule lines. It reports whether every
// tile has a place for its rule line.
func (st *strip) divide(f fit) bool {
	lo, hi := st.reach(st.tags)
	if hi-lo <= st.wide && f != centred {
		if f == loosely {
			spare := (st.wide - (hi - lo)) / 2
			lo, hi = lo-spare, hi+spare
		}
		st.tiles = []tile{{from: lo, To: hi, tags: st.tags}}
		return true
	}
	half := st.wide / 2
	var left, mine, right []*tag
	for _, g := range st.tags {
		switch {
		case g.at < -half+markEdge:
			left = append(left, g)
		case g.at > half-markEdge:
			right = append(right, g)
		default:
			mine = append(mine, g)
		}
	}
	t := tile{from: -half, To: half, tags: mine}
	if f == snugly {
		lo, hi = st.reach(mine)
		t.from, t.To = max(t.from, lo), min(t.To, hi)
	}
	slices.Reverse(left)
	before, okay := st.beyond(left, -1, half, f)
	after, also := st.beyond(right, 1, half, f)
	slices.Reverse(before)
	st.tiles = slices.Concat(before, []tile{t}, after)
	return okay && also
}

// beyond makes the tiles for marks on one side of the bit's own, the nearest
// first: side is 1 on the infeed side, -1 on the other. Places count from the
// bit outward.
func (st *strip) beyond(tags []*tag, side, inner paper.Paper, f fit) ([]tile, bool) {
	var tiles []tile
	for len(tags) > 0 {
		first := side * tags[0].at
		edge := side * st.edgeOf(tags[0])
		round := roundest(st.s.Scale.Unit, st.wide)
		before := edge + round*paper.Paper(math.Floor(float64((first-ruleClear-edge)/round)))
		from := max(inner-2*markEdge, before-ruleEdge)
		n := 0
		for n < len(tags) && side*tags[n].at <= from+st.wide-markEdge {
			n++
		}
		t := tile{tags: slices.Clone(tags[:n])}
		inner = from + st.wide
		t.rule = st.ruleOn(t.tags, side, from, inner)
		if t.rule == nil {
			return tiles, false
		}
		t.tags = append(t.tags, t.rule.tag)
		tags = tags[n:]
		if f == snugly {
			reach := from + headRoom
			for _, g := range t.tags {
				reach = max(reach, side*g.at+g.width()+tileEdge)
			}
			inner = min(inner, reach)
		}
		t.from, t.To = min(side*from, side*inner), max(side*from, side*inner)
		slices.SortStableFunc(t.tags, func(a, b *tag) int { return compare(a.at, b.at) })
		tiles = append(tiles, t)
	}
	return tiles, true
}

// edgeOf is the edge of the bit that a mark is measured from.
func (st *strip) edgeOf(g *tag) paper.Paper {
	if g.stop {
		return st.radius
	}
	return -st.radius
}

// rounds are the distances whose multiples a rule line may have, the roundest
// first, in millimetres.
var rounds = map[measure.Unit][]paper.Paper{
	measure.Inches:      {12 * paper.Inch, 6 * paper.Inch, 4 * paper.Inch, 2 * paper.Inch, paper.Inch},
	measure.Millimetres: {500, 200, 100, 50, 10},
}

// roundest is the roundest distance of which a tile has one with room for marks
// beyond it.
func roundest(unit measure.Unit, wide paper.Paper) paper.Paper {
	for _, r := range rounds[unit] {
		if r <= wide*0.6 {
			return r
		}
	}
	return rounds[unit][len(rounds[unit])-1]
}

// ruleOn finds a tile's rule line: at the roundest distance before its first
// mark, where there is one, else at any that is clear of all marks. It is
// measured from the edge that the first mark is measured from.
func (st *strip) ruleOn(tags []*tag, side, from, to paper.Paper) *rule {
	edge := side * st.edgeOf(tags[0])
	for _, end := range []paper.Paper{side*tags[0].at - ruleClear, to - markEdge - tileEdge} {
		for _, round := range rounds[st.s.Scale.Unit] {
			for n := math.Ceil(float64((from + markEdge - edge) / round)); edge+round*paper.Paper(n) <= end; n++ {
				at := edge + round*paper.Paper(n)
				if n > 0 && !slices.ContainsFunc(st.tags, func(g *tag) bool { return max(at-side*g.at, side*g.at-at) < ruleClear }) {
					return st.newRule(side*at, measure.FromMillimetres(float64(at-edge)), tags[0].stop, side < 0)
				}
			}
		}
	}
	return nil
}

// newRule labels a rule line.
func (st *strip) newRule(at paper.Paper, distance measure.Length, leading, left bool) *rule {
	edge := "TRAILING"
	if leading {
		edge = "LEADING"
	}
	bold, small := st.s.Bold(paper.Least), st.s.Letters(paper.Least)
	label := paper.Phrase{}.Say(bold, "RULE").Keep(bold, st.s.Scale.Say(distance)).Say(small, "from the bit's "+edge+" edge").Set(st.labelWidth())
	return &rule{&tag{at: at, left: left, ruled: true, label: label}, distance, leading}
}

// reach is how far a tile with the bit goes if every label stands straight
// beside its mark.
func (st *strip) reach(tags []*tag) (lo, hi paper.Paper) {
	lo, hi = -st.column-headRoom, st.column+tileEdge
	for _, g := range tags {
		end := g.at
		if g.left {
			end = min(end, -st.column) - g.width() - tileEdge
		} else {
			end = max(end, st.column) + g.width() + tileEdge
		}
		lo, hi = min(lo, end), max(hi, end)
	}
	return lo, hi
}
