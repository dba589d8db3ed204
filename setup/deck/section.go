package deck

import (
	"fencecard/joinery/measure"
)

// Section is the work and its channel across the feed, as a run lays them on
// the machine: distances from the fence face out toward the operator, and from
// the table up.
type Section struct {
	Across measure.Length // of the work, fence to the side opposite
	Up     measure.Length // of the work, table to the side opposite
	Near   measure.Length // fence face to the channel's near wall
	Far    measure.Length // fence face to its far wall
	Depth  measure.Length // of the whole channel, up from the table
}

// Section returns the run's section. Its channel is the whole one the cut
// asks for, of which this run may make a part.
func (r *Run) Section() Section {
	ch := r.Channel
	if ch.Near != r.Step.Fence {
		ch = ch.Reversed(r.Piece.Size)
	}
	return Section{
		Across: r.Piece.Size.Between(ch.Near),
		Up:     r.Piece.Size.Between(ch.Down),
		Near:   ch.Setback,
		Far:    ch.Setback + ch.Width,
		Depth:  ch.Depth,
	}
}

// Uncut returns the part of the channel that later runs of it take, as two
// distances from the fence face; they are equal where this run is the last.
func (r *Run) Uncut() (from, to measure.Length) {
	s, bit := r.Section(), FenceAt(r.Step.Bit, r.Step.NearEdge)
	switch {
	case r.Step.Position == r.Step.Of:
		return s.Far, s.Far
	case r.Step.Turned:
		return s.Near, bit.NearEdge // the half far from the fence is cut first
	}
	return bit.FarEdge, s.Far
}
