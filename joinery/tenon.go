package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// Tenon is a tongue at the end of a piece: one channel for each cheek named.
var Tenon = Kind{
	Name:     "tenon",
	Says:     "a tongue at an end",
	Required: []string{"at", "length", "cheeks"},
	Example:  "at: left, length: 7/8, cheeks: {front: 3/16, back: 3/16}",
	Refuses:  map[string]Refusal{"repeat": {"it lies at one place, an end", "write each with a dash of its own"}},
	Enters:   true,
	Deepest:  timber.Share{Num: 2, Den: 3}, // common practice, no source
	lay:      layTenon,
}

// RoundEdges is the note of a tenon whose edges are rounded by hand to go into a
// mortise with round ends. Whoever holds the two together looks for it.
const RoundEdges = "round its edges by hand, as the ends of the mortise are"

// layTenon lays a channel for each cheek, the end of the piece to the fence.
func layTenon(l *layout) {
	c := l.cut
	var taken [3]measure.Length
	for _, cheek := range c.Cheeks {
		if c.At != NoSide && cheek.Side.Dimension() == c.At.Dimension() {
			l.fault("name cheeks from these: "+besides(c.At), []string{"cheeks"},
				"the tenon is at the %s, so the %s has no cheek", c.At, cheek.Side)
			return
		}
		taken[cheek.Side.Dimension()] += cheek.Depth
		l.shoulder(cheek.Side.String()+" cheek", cheek.Side, "cheeks", cheek.Depth)
	}
	for _, d := range Dimensions {
		if taken[d] > 0 && taken[d] >= l.piece.Size[d] {
			l.fault("make the cheeks shallower: the piece measures "+l.text(l.piece.Size[d])+" "+d.String(), []string{"cheeks"},
				"the cheeks take %s off %s, so no tenon is left", l.text(taken[d]), d)
			return
		}
	}
}
