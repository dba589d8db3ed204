package remark

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/solid"
)

// thicken says how the wood between two channels becomes thicker by so much: which
// of the two is moved, and which way, where only one of them has room to move.
func (w *work) thicken(a, b *made, by measure.Length) string {
	enough := w.enough(by)
	either := fmt.Sprintf("move one %s away, or make it narrower or shallower", enough)
	d, one := between(a.box, b.box)
	if !one {
		return either
	}
	low, high := a, b
	if a.box[d].Lo > b.box[d].Lo {
		low, high = b, a
	}
	size := w.piece.Size[d]
	spare := by + w.wall(size)
	lower := low.channel.Down.Dimension() != d && low.box[d].Lo >= spare
	higher := high.channel.Down.Dimension() != d && size-high.box[d].Hi >= spare
	switch {
	case lower && higher:
		return either
	case lower:
		return fmt.Sprintf("move the %s %s toward the %s, or make one narrower or shallower", low.words(), enough, d.Low())
	case higher:
		return fmt.Sprintf("move the %s %s toward the %s, or make one narrower or shallower", high.words(), enough, d.High())
	}
	return fmt.Sprintf("make one %s narrower, shorter or shallower; there is no wood to move either into", enough)
}

// between is the one dimension along which two blocks lie apart, if it is only one.
func between(a, b solid.Box) (joinery.Dimension, bool) {
	var found joinery.Dimension
	n := 0
	for _, d := range joinery.Dimensions {
		if a[d].Gap(b[d]) >= 0 {
			found = d
			n++
		}
	}
	return found, n == 1
}
