package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
)

// Cut is one cut as the maker wrote it. Which fields count depends on its
// kind: [Kind.Keys] lists them.
type Cut struct {
	Kind     *Kind
	Name     string
	In       Side           // the side the bit enters
	At       Side           // the end a lap or tenon is on
	Along    Side           // the edge a rabbet takes away
	Width    measure.Length // near wall to far wall
	Length   measure.Length // of a lap or tenon, along the piece
	Depth    measure.Length // from In into the wood
	Start    Setback        // where the near wall is
	Span     Span           // where it runs
	Cheeks   []Cheek        // of a tenon, in the order of [Sides]
	Slot     *ScrewSlot     // of a slot for a screw; else nil
	Moulding *Moulding      // of a shaped edge; else nil
	Fence    Fencing        // the maker's wish for the fence
	Square   bool           // round ends are chiselled square afterwards
	After    []string
	Mates    Mate // what goes into it, or what it goes into
	OfJoint  bool // a joint of the plan made it, which knows what goes in
	Note     string
	Bit      string // the one bit to make it with, by its name in the shop; "" for any
	Bored    bool   // its start is bored first, so that no work is dropped onto the bit
	By       string // what it is made with by hand, such as "saw"; "" at the router table
	Place    plantext.Place
	Places   plantext.Places

	Channels []Channel // what the cut comes down to; filled by [Cut.Lay]
}

// Setback is the distance from a side to a channel's near wall. A centred
// channel has no distance; its side may be [NoSide].
type Setback struct {
	Distance measure.Length
	From     Side
	Centred  bool
}

// Span is where a channel runs, from one line to another, both measured from
// one side. The zero value means from end to end.
type Span struct {
	From, To measure.Length
	Side     Side // NoSide: from end to end
	// Bare tells that To was written with a unit and From without one, which
	// with that unit would be another length.
	Bare bool
}

// Whole reports whether the span is left out: from end to end.
func (s Span) Whole() bool { return s.Side == NoSide }

// Mate names the other half of a joint: a cut of a piece, or the whole piece
// where the cut is "". Piece "" is no mate. The names are those of the cut that
// the maker wrote; Across tells how this one was mirrored from it.
type Mate struct {
	Piece, Cut string
	Across     Flips
}

// Cheek is how much a tenon takes off one side.
type Cheek struct {
	Side  Side
	Depth measure.Length
}

// Fencing is which side a maker wants against the fence.
type Fencing struct {
	Side   Side // NoSide: the side the setback is measured from
	Either bool // both this side and the one opposite will do
}

// Channel is the channel every cut comes down to: a rectangle across its run, or
// a shaped edge.
type Channel struct {
	Part    string         // which part of the cut this is, "front cheek", or ""
	Down    Side           // the side the bit enters; it lies on the table
	Near    Side           // the side the near wall is measured from
	Setback measure.Length // from Near to the near wall
	Width   measure.Length // near wall to far wall
	Depth   measure.Length // from Down into the wood
	Lo, Hi  measure.Length // the span, from the low side of [Channel.Run]
	Section Section        // across its run; what is said of walls is then that of the block around it
	Recess  Recess         // a wider channel, made before it, from whose floor it goes on
}

// Recess is a channel in whose floor another one lies: how deep and how wide it
// is, and how far each of its ends lies beyond the other's. The zero value is none.
type Recess struct{ Depth, Width, Beyond measure.Length }

// ShankRoom is the least that is left between a turning shank and the wall of a
// recess that it enters, 0.5 mm (common practice, no source).
const ShankRoom = measure.Millimetre / 2

// Run returns the dimension the channel runs along.
func (c Channel) Run() Dimension {
	return c.Down.Dimension().Third(c.Near.Dimension())
}

// Reversed returns the same channel with its walls measured from the side
// opposite Near.
func (c Channel) Reversed(size Size) Channel {
	c.Setback = size.Between(c.Near) - c.Setback - c.Width
	c.Near = c.Near.Opposite()
	return c
}

// OpenAt reports whether the channel runs out of the stock at that side, which
// must be an end of its run.
func (c Channel) OpenAt(end Side, size Size) bool {
	if end.High() {
		return c.Hi == size.Between(end)
	}
	return c.Lo == 0
}

// EndToEnd reports whether the channel runs out of both ends of a piece of a size.
func (c Channel) EndToEnd(size Size) bool {
	run := c.Run()
	return c.OpenAt(run.Low(), size) && c.OpenAt(run.High(), size)
}

// InMiddle reports whether the channel stands in the middle of a piece between two
// walls.
func (c Channel) InMiddle(size Size) bool {
	return c.Setback > 0 && 2*c.Setback+c.Width == size.Between(c.Near)
}

// OpenBeside reports whether the channel has no wall at that side, which must
// be Near or the side opposite.
func (c Channel) OpenBeside(side Side, size Size) bool {
	if side == c.Near {
		return c.Setback == 0
	}
	return c.Setback+c.Width == size.Between(c.Near)
}
