package joints

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// tenonsMeet warns of two tenons that come together inside one piece.
func tenonsMeet(found []deck.Joint, s measure.Scale) []deck.Warning {
	var warnings []deck.Warning
	for i := range found {
		for k := range found[:i] {
			a, b := &found[k], &found[i]
			if a.Part.Cut == nil || b.Part.Cut == nil || a.Into.Piece != b.Into.Piece || !boxOf(a).meets(boxOf(b)) {
				continue
			}
			warnings = append(warnings, deck.Warning{
				Code: "tenons-meet", Piece: a.Into.Piece.Name, Cut: b.Into.Cut.Name, Place: b.Into.Cut.Place,
				Text: fmt.Sprintf("%s and %s meet inside %q: mitre their ends, or make the one %s long or the other %s",
					a.Part, b.Part, a.Into.Piece.Name, s.Say(clearOf(a, b, trade.WebInLeg.Of(s))), s.Say(clearOf(b, a, trade.WebInLeg.Of(s)))),
			})
		}
	}
	return warnings
}

// boxOf is a tenon inside the piece it goes into, from the low sides.
type box struct{ lo, hi [3]measure.Length }

func boxOf(j *deck.Joint) box {
	var b box
	ch, size := j.Into.Cut.Channels[0], j.Into.Piece.Size
	put := func(from joinery.Side, near, far measure.Length) {
		d := from.Dimension()
		if from.High() {
			near, far = size[d]-far, size[d]-near
		}
		b.lo[d], b.hi[d] = near, far
	}
	put(ch.Near, ch.Setback, ch.Setback+ch.Width)
	put(ch.Down, 0, min(ch.Depth, j.Part.Cut.Length))
	put(ch.Run().Low(), ch.Lo, ch.Hi)
	return b
}

func (b box) meets(other box) bool {
	for d := range b.lo {
		if b.hi[d] <= other.lo[d] || other.hi[d] <= b.lo[d] {
			return false
		}
	}
	return true
}

// clearOf is how long the tenon of a may be to stay a web away from that of b;
// 0 where nothing is left.
func clearOf(a, b *deck.Joint, web measure.Length) measure.Length {
	down, other := a.Into.Cut.Channels[0].Down, boxOf(b)
	d := down.Dimension()
	if down.High() {
		return max(0, a.Into.Piece.Size[d]-other.hi[d]-web)
	}
	return max(0, other.lo[d]-web)
}
