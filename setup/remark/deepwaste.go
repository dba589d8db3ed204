package remark

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/remark/trade"
)

// findDeepWaste looks for wood at the end of a piece that a saw takes off sooner
// than a bit: an edge shoulder deeper than an inch, and the haunch of a tenon.
func findDeepWaste(w *work) []finding {
	var found []finding
	for _, m := range w.atTable() {
		if m.runs[0].Step.Fence.Dimension() != w.piece.Grain || !atEnd(m.runs[0]) {
			continue
		}
		what := fmt.Sprintf("%s deep", w.text(m.channel.Depth))
		switch deep := trade.DeepWaste.Of(w.scale); {
		case w.haunch(m):
			what = "the haunch of a tenon"
		case m.channel.Depth <= deep:
			continue
		}
		passes := 0
		for _, r := range m.runs {
			passes += r.Piece.Count * r.Passes()
		}
		minutes := (joinery.Time(passes) * w.shop.Minutes.Pass).Minutes()
		remedy := "write by: saw"
		if m.cut.Kind.Has("cheeks") {
			remedy = fmt.Sprintf("leave the %s out of its cheeks, and add a lap there with by: saw", m.channel.Down)
		}
		over := "1 pass"
		if passes > 1 {
			over = fmt.Sprintf("%d passes", passes)
		}
		found = append(found, finding{m.cut, fmt.Sprintf("the %s is %s and takes %s over the bit, about %g min: a saw is quicker (%s)",
			m.words(), what, over, minutes, remedy), []string{"depth", "cheeks"}})
	}
	return found
}

// atEnd reports whether a run takes off an end of its piece from side to side.
func atEnd(r *deck.Run) bool {
	return facing(r).OpenBeside(r.Step.Fence, r.Piece.Size) && r.Channel.EndToEnd(r.Piece.Size)
}

// haunch reports whether a cut shortens the tongue of another at the same end.
func (w *work) haunch(m *made) bool {
	if m.cut.Kind.Enters {
		return false
	}
	for i := range w.piece.Cuts {
		c := &w.piece.Cuts[i]
		if c.Kind.Enters && c.At == m.runs[0].Step.Fence && m.channel.Width < c.Length {
			return true
		}
	}
	return false
}
