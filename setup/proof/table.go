package proof

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/solid"
)

// The machine's axes: x to the operator's right, y away toward the fence, z
// up. The work is fed toward -x, so the side that faces -x leads.

// leading returns the side of the work that faces the outfeed when down lies
// on the table and fence bears against the fence, or no side where both lie
// along one dimension. A rigid blank can be turned but not mirrored: of the
// two sides left over, the one for +x makes a right-handed frame with the
// fence side for +y and the side away from the table for +z.
func leading(down, fence joinery.Side) joinery.Side {
	if down.Dimension() == fence.Dimension() {
		return joinery.NoSide
	}
	for _, side := range joinery.Sides {
		x := side.Opposite()
		if handedness(outward(x), outward(fence), outward(down.Opposite())) == 1 {
			return side
		}
	}
	return joinery.NoSide
}

// outward is the direction a side faces, in the stock's axes.
func outward(s joinery.Side) (v [3]int) {
	v[s.Dimension()] = -1
	if s.High() {
		v[s.Dimension()] = 1
	}
	return v
}

// handedness is the determinant of three directions: 1 for a right-handed
// frame, -1 for a left-handed one, 0 for no frame.
func handedness(x, y, z [3]int) int {
	return x[0]*(y[1]*z[2]-y[2]*z[1]) - x[1]*(y[0]*z[2]-y[2]*z[0]) + x[2]*(y[0]*z[1]-y[1]*z[0])
}

// table is one run set up: the bit's centre is the origin, its near and far
// edge half a diameter toward and away from the fence, its trailing and leading
// edge half a diameter to the left and right.
type table struct {
	claim *Run
	bit   measure.Length // diameter
	size  joinery.Size
	long  measure.Length // of the work along the feed, from the plan
	tool  *joinery.Bit
	// along is how wide the bit is along the fence: of a shaped edge it is what comes
	// out of the fence.
	along measure.Length
}

// onTable puts a run on the table.
func onTable(c *Run, f deck.Fence, w *wanted, bit *joinery.Bit) table {
	t := table{claim: c, bit: bit.True(), size: w.piece.Size, long: w.piece.Size.Between(c.Leads), tool: bit, along: bit.True()}
	if bit.Outline != nil {
		t.along = outOfFence(bit, f, w.channel.Depth)
	}
	return t
}

func (t table) half() measure.Length { return t.bit / 2 }

// fenceNumber is one of the three distances that set a fence, and where the bit
// then cuts its near wall, from the side at the fence.
type fenceNumber struct {
	name string
	near measure.Length
}

func (t table) fenceNumbers(f deck.Fence) [3]fenceNumber {
	return [3]fenceNumber{
		{"to the near edge", f.NearEdge},
		{"to the centre", f.Centre - t.half()},
		{"to the far edge", f.FarEdge - t.bit},
	}
}

// markNumber is one number of a mark and where the cut then begins or ends,
// from the leading end of the work.
type markNumber struct {
	name string
	line measure.Length
}

// starts returns where the bit's trailing edge first meets the wood, by each
// number of the start mark. With the leading end p to the left of a place, that
// place lies p into the work; with the tail end q to its right, q from the far
// end.
func (t table) starts(m *deck.Mark) [5]markNumber {
	return [5]markNumber{
		{"the layout line", m.Line},
		{"leading end past the trailing edge", m.LeadPastEdge},
		{"leading end past the centre", m.LeadPastCentre - t.along/2},
		{"tail end before the trailing edge", t.long - m.TailBeforeEdge},
		{"tail end before the centre", t.long - m.TailBeforeCentre - t.along/2},
	}
}

// stops returns where the bit's leading edge last meets the wood, by each
// number of the stop mark.
func (t table) stops(m *deck.Mark) [5]markNumber {
	return [5]markNumber{
		{"the layout line", m.Line},
		{"leading end past the leading edge", m.LeadPastEdge},
		{"leading end past the centre", m.LeadPastCentre + t.along/2},
		{"tail end before the leading edge", t.long - m.TailBeforeEdge},
		{"tail end before the centre", t.long - m.TailBeforeCentre + t.along/2},
	}
}

// cut returns the room the bit sweeps in the piece, by the run's first way of
// setting everything: near edge, layout lines and the last height. A run with
// no start is fed in from outside, one with no stop runs out.
func (t table) cut(f deck.Fence) solid.Hollow {
	c := t.claim
	from, to := -t.bit, t.long+t.bit
	if c.Start != nil {
		from = c.Start.Line
	}
	if c.Stop != nil {
		to = c.Stop.Line
	}
	h := solid.Hollow{
		Down: c.Down, Across: c.Fence.Dimension(), Radius: t.half(),
		Walls: solid.From(c.Fence, c.from(f.NearEdge), f.NearEdge+t.bit, t.size),
		Ends:  solid.From(c.Leads, from, to, t.size),
	}
	if n := len(c.Heights); n > 0 {
		h.Depth = c.Heights[n-1]
	}
	if t.tool.Outline != nil {
		h.Section = joinery.Section{Outline: t.tool.Outline, Forward: t.forward(f)}
	}
	return h
}
