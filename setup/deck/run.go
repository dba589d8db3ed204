package deck

import (
	"strconv"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
)

// Run is one run of one kind of piece over the bit.
type Run struct {
	Setup, Index int // the run's number is Setup.Index, both from 1
	Climb        int // from 0 in each setup: runs of one climb go up the ladder together; between marks all do
	Piece        *joinery.Piece
	Cut          *joinery.Cut
	Channel      joinery.Channel // what the cut asks for, as laid out
	Step         Step
	Leads        joinery.Side
	Length       measure.Length // of the work along the feed
	A, B         measure.Length // leading end to the nearer and farther end of the cut
	Begin        Begin
	End          End
	Start, Stop  *Mark            // nil where the cut is open
	Pair         string           // the letter of its pair of marks; "" where it has neither mark
	Pivot        *Pivot           // what dropping it takes at its full height; nil where it is fed in
	Heights      []measure.Length // the rungs of the setup's ladder it uses
	Cap          ladder.Cap       // the greatest depth of one pass, and its reason
	Cautions     []Caution        // the gravest first
	Joint        *Joint           // the joint its cut is a half of; nil for none
	Hole         *Hole            // the start hole it is lowered over; nil for none
	Raised       bool             // clamped where it would be dropped, and the turning bit raised into it
	Guided       bool             // pushed by a block, a gauge or a carriage, whichever the shop has
	Screw        *Screw           // where its screw goes in the slot; nil where that is not known or it is no slot's shank
	Nibble       *Nibble          // nil where one pass does at every height
}

// Up and TowardYou are the sides that show while the work is run: those
// opposite the table and the fence.
func (r *Run) Up() joinery.Side { return r.Step.Down.Opposite() }

// TowardYou is the side that faces the operator.
func (r *Run) TowardYou() joinery.Side { return r.Step.Fence.Opposite() }

// Number gives the run's number, such as "2.3".
func (r *Run) Number() string { return strconv.Itoa(r.Setup) + "." + strconv.Itoa(r.Index) }

// Travel is how far the work moves between its marks, b - a - D, or the chord of a shaped edge; it means
// something only for a cut stopped at both ends.
func (r *Run) Travel() measure.Length { return r.B - r.A - r.Along() }
