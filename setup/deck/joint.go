package deck

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// Joint is two halves of the plan that go together, checked against each
// other. It is made from a cut's mates; a joint that both halves name is one.
type Joint struct {
	Into     Half // the mortise, groove or dado
	Part     Half // the tenon, or a whole piece such as a shelf
	Fits     []Fit
	Reveals  []Reveal
	Movement *Movement // nil where no grain crosses
}

// Half is one side of a joint. Cut is nil for a whole piece.
type Half struct {
	Piece  *joinery.Piece
	Cut    *joinery.Cut
	End    joinery.Side   // of what goes in: a tenon's end, or that of a whole piece
	Enters measure.Length // how far it goes in
}

// Fit is one dimension of a joint: the room, what goes into it, and the gap
// that the shop wants between the two.
type Fit struct {
	Of                string // "thickness", "width" or "length"
	Room, Part, Wants measure.Length
}

// Gap is what is left of the room; negative where the part does not go in.
func (f Fit) Gap() measure.Length { return f.Room - f.Part }

// Reveal is how far the part's face stands back from the face of the piece it
// goes into; negative where it stands proud.
type Reveal struct {
	Side     joinery.Side
	Distance measure.Length
	// Play is how much nearer to the side the joint's own play lets it lie; 0 where it
	// lies against the wall there.
	Play measure.Length
}

// String names the half for a message: `tenon "left" of "seat rail"`.
func (h Half) String() string {
	if h.Cut == nil {
		return fmt.Sprintf("%q", h.Piece.Name)
	}
	return fmt.Sprintf("%s %q of %q", h.Cut.Kind, h.Cut.Name, h.Piece.Name)
}

// Movement is what the seasons do in a joint whose two halves do not move
// alike, along its channel.
type Movement struct {
	Along  joinery.Dimension
	Width  measure.Length // of the part
	Need   measure.Length // how much the two move against each other from dry to damp
	Room   measure.Length // what the channel leaves beside the part
	Open   bool           // the channel is open at the free end: room without end
	Fixed  joinery.Side   // the end to set and glue
	Glue   measure.Length // how much of the part to glue from there; the whole width where it is narrow, none of a panel that floats
	Wood   timber.Wood    // the wood the part was reckoned as
	Change string         // moisture and humidity it was worked out for
}

// Whole reports whether the part is narrow enough to be glued all over.
func (m Movement) Whole() bool { return m.Glue >= m.Width }

// Floats reports whether the part is left free in its groove, as a panel in a frame.
func (m Movement) Floats() bool { return m.Glue == 0 }

// Short is how much room is lacking.
func (m Movement) Short() measure.Length {
	if m.Open || m.Whole() {
		return 0
	}
	return max(0, m.Need-m.Room)
}
