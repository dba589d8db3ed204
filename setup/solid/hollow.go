package solid

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Range is a stretch of one dimension of a piece, from its low side.
type Range struct{ Lo, Hi measure.Length }

// Long returns the length of the range; an empty one is 0 long.
func (r Range) Long() measure.Length { return max(0, r.Hi-r.Lo) }

// And returns what two ranges share; it is empty where Hi is not above Lo.
func (r Range) And(s Range) Range { return Range{max(r.Lo, s.Lo), min(r.Hi, s.Hi)} }

// Within reports whether the range lies inside another.
func (r Range) Within(s Range) bool { return r.Lo >= s.Lo && r.Hi <= s.Hi }

// Gap returns the distance between two ranges, negative where they overlap.
func (r Range) Gap(s Range) measure.Length { return max(s.Lo-r.Hi, r.Lo-s.Hi) }

// Box is a block with sides along the dimensions.
type Box [3]Range

// Whole returns the box of a blank.
func Whole(size joinery.Size) Box {
	return Box{{0, size[0]}, {0, size[1]}, {0, size[2]}}
}

// And returns what two boxes share.
func (b Box) And(c Box) Box {
	return Box{b[0].And(c[0]), b[1].And(c[1]), b[2].And(c[2])}
}

// Empty reports whether the box holds no wood.
func (b Box) Empty() bool {
	return b[0].Hi <= b[0].Lo || b[1].Hi <= b[1].Lo || b[2].Hi <= b[2].Lo
}

// Hollow is the room swept by a bit that enters one side. Walls and Ends may
// lie outside the blank; both are at least two radii long.
type Hollow struct {
	Down   joinery.Side      // the side the bit enters
	Depth  measure.Length    // from Down into the wood
	Across joinery.Dimension // from wall to wall
	Walls  Range             // along Across
	Ends   Range             // along the third dimension, round ends included
	Radius measure.Length    // of the bit, which rounds the four corners
	// Section is that of a shaped edge, whose fence is at the blank's surface that
	// Walls begin behind; only [Removed] looks at it, everything else at the block.
	Section joinery.Section
}

// Run returns the dimension the work is fed along.
func (h Hollow) Run() joinery.Dimension { return h.Down.Dimension().Third(h.Across) }

// Box returns the block around the part of the hollow inside the blank.
func (h Hollow) Box(size joinery.Size) Box {
	var b Box
	down := h.Down.Dimension()
	b[down] = Range{0, h.Depth}
	if h.Down.High() {
		b[down] = Range{size[down] - h.Depth, size[down]}
	}
	b[h.Across], b[h.Run()] = h.Walls, h.Ends
	return b.And(Whole(size))
}

// From returns the range between two distances from a side.
func From(side joinery.Side, near, far measure.Length, size joinery.Size) Range {
	if side.High() {
		long := size.Between(side)
		return Range{long - far, long - near}
	}
	return Range{near, far}
}

// Of returns the hollow that a bit of diameter d makes of a channel, all fence
// distances together. Where the channel is open the bit runs d past the blank;
// where it is wider than the channel it stands out at the open wall. Between
// two fence distances far apart a cusp may be left at a round end, which this
// hollow counts as gone; [Run] is exact.
func Of(ch joinery.Channel, size joinery.Size, d measure.Length) Hollow {
	near, far := ch.Setback, ch.Setback+ch.Width
	if over := d - ch.Width; over > 0 && near == 0 {
		near -= over
	} else if over > 0 {
		far += over
	}
	h := Run(ch, size, d, ch.Near, near)
	h.Walls = From(ch.Near, near, far, size)
	return h
}

// Run returns the hollow of one run: a bit of diameter d with its near edge at
// a distance from the side at the fence, moved from end to end of a channel.
func Run(ch joinery.Channel, size joinery.Size, d measure.Length, fence joinery.Side, near measure.Length) Hollow {
	h := Hollow{
		Down: ch.Down, Depth: ch.Depth, Radius: d / 2,
		Across: ch.Near.Dimension(), Walls: From(fence, near, near+d, size),
		Ends: Range{ch.Lo, ch.Hi},
	}
	if h.Ends.Lo == 0 {
		h.Ends.Lo = -d
	}
	if h.Ends.Hi == size[ch.Run()] {
		h.Ends.Hi += d
	}
	return h
}
