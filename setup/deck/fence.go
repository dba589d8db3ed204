package deck

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// SetTo is where the fence is set: as computed or, where the setup book knows better,
// where it stood after the test cut. All that is printed of a fence follows from it.
// Walls and proofs keep to the computed one: what a test cut teaches is by how much
// this table's rule reads otherwise.
func (s *Setup) SetTo() Fence { return s.Kept.Fence(s.Fence) }

// Fence is where a fence of that computed distance is set.
func (k *Kept) Fence(computed Fence) Fence {
	if k == nil || k.FenceStood == nil {
		return computed
	}
	off := *k.FenceStood - computed.NearEdge
	return Fence{computed.NearEdge + off, computed.Centre + off, computed.FarEdge + off}
}

// SetAt is where the bit is set for one of a setup's heights: as computed or, at the
// full one, where the setup book knows that it stood after the test cut.
func (s *Setup) SetAt(h measure.Length) measure.Length { return s.Kept.Height(h, s.Heights) }

// Rungs is the ladder as the bit is set: what is printed of heights follows from it.
func (s *Setup) Rungs() []measure.Length {
	set := make([]measure.Length, len(s.Heights))
	for i, h := range s.Heights {
		set[i] = s.SetAt(h)
	}
	return set
}

// BitRungs is how high the bit is set above the table for each height.
func (s *Setup) BitRungs() []measure.Length {
	above := s.Rungs()
	for i := range above {
		above[i] += s.Carriage
	}
	return above
}

// ComputedFull is the full height as computed, where the bit is set to another.
func (s *Setup) ComputedFull() (full measure.Length, ok bool) {
	if len(s.Heights) == 0 {
		return 0, false
	}
	full = s.Heights[len(s.Heights)-1]
	return full, s.SetAt(full) != full
}

// Height is where the bit is set, above the work's underside, for a height of a
// setup's ladder: another than computed at the full one alone.
func (k *Kept) Height(computed measure.Length, ladder []measure.Length) measure.Length {
	if k == nil || k.HeightStood == nil || len(ladder) == 0 || computed != ladder[len(ladder)-1] {
		return computed
	}
	return *k.HeightStood
}

// Numbers reports whether test cuts taught other numbers than those computed.
func (k *Kept) Numbers() bool { return k != nil && (k.FenceStood != nil || k.HeightStood != nil) }

// MostLearnt is how far something stands from what was computed after a test cut;
// further off it is another setup or a slip (common practice, no source).
const MostLearnt = measure.Inch / 4

// MostLearntHeight is the same for the bit's full height, whose last pass it deepens
// (common practice, no source).
const MostLearntHeight = measure.Inch / 16

// FenceAt returns the distances from the fence face to the bit's near edge,
// centre and far edge.
func FenceAt(bit *joinery.Bit, nearEdge measure.Length) Fence {
	d := bit.True()
	return Fence{NearEdge: nearEdge, Centre: nearEdge + d/2, FarEdge: nearEdge + d}
}
