package setup

import (
	"strconv"

	"fencecard/joinery"
	"fencecard/setup/search"
)

// Deck is a whole plan as setups in running order.
type Deck struct {
	Plan     *joinery.Plan
	Setups   []Setup
	Changes  Changes
	Ended    search.Ended // why the search for the fewest changes ended
	Joints   []Joint
	Warnings []Warning
}

// Cards counts the cards of all setups.
func (d *Deck) Cards() int {
	n := 0
	for i := range d.Setups {
		n += len(d.Setups[i].Cards)
	}
	return n
}

// Setup is one bit at one fence distance, and the cards run there.
type Setup struct {
	Number  int // from 1, in running order
	Bit     *joinery.Bit
	Fence   Fence
	Heights []joinery.Length // the ladder, climbing; between blocks the heights of all climbs
	Cards   []Card
	Kept    *Kept // what the maker's setup book says of it; nil where it is not kept
}

// Kept is what a setup book says of a setup that equals one in it.
type Kept struct {
	Name  string
	Code  string   // from the setup's contents, the same on every machine
	Notes []string // the maker's own, a line each
	// Learnt says what test cuts taught, a sentence each without a full stop:
	// "after the test cut the fence stood at 33/64 to the near edge".
	Learnt []string
}

// Fence is the distance from the fence face to the bit; to the near edge it
// is negative where the bit is buried in the fence.
type Fence struct {
	NearEdge, Centre, FarEdge joinery.Length
}

// Begin is how a cut begins.
type Begin uint8

// A cut is fed in from the end of the work, or the work is dropped on the bit.
const (
	FeedIn Begin = iota
	Drop
)

// String gives the word of the deck: "feed-in" or "drop".
func (b Begin) String() string {
	if b == Drop {
		return "drop"
	}
	return "feed-in"
}

// End is how a cut ends.
type End uint8

// A cut runs out of the end of the work, or the work is lifted off the bit.
const (
	RunOut End = iota
	Lift
)

// String gives the word of the deck: "run-out" or "lift".
func (e End) String() string {
	if e == Lift {
		return "lift"
	}
	return "run-out"
}

// Card is one run of one kind of piece over the bit.
type Card struct {
	Setup, Index int // the card's number is Setup.Index, both from 1
	Climb        int // from 0 in each setup: cards of one climb go up the ladder together; between marks all do
	Piece        *joinery.Piece
	Cut          *joinery.Cut
	Channel      joinery.Channel // what the cut asks for, as laid out
	Run          Run
	Leads        joinery.Side
	Length       joinery.Length // of the work along the feed
	A, B         joinery.Length // leading end to the nearer and farther end of the cut
	Begin        Begin
	End          End
	Start, Stop  *Mark            // nil where the cut is open
	Heights      []joinery.Length // the rungs of the setup's ladder it uses
	Cap          Cap              // the greatest depth of one pass, and its reason
	Cautions     []Caution        // the gravest first
	Joint        *Joint           // the joint its cut is a half of; nil for none
}

// Number gives the card's number, such as "2.3".
func (c *Card) Number() string { return strconv.Itoa(c.Setup) + "." + strconv.Itoa(c.Index) }

// Mark is where the work stands when a stopped cut starts or stops. At the
// start the bit's edge is its trailing edge, at the stop its leading edge.
// Past is to the left, before to the right; negative means the other side.
type Mark struct {
	Line             joinery.Length // the layout line, from the leading end of the work
	LeadPastEdge     joinery.Length
	LeadPastCentre   joinery.Length
	TailBeforeEdge   joinery.Length
	TailBeforeCentre joinery.Length
}

// Warning is something that does not stop the work but a maker should know.
type Warning struct {
	Code  string // a word such as "thin-wall"
	Piece string
	Cut   string
	Text  string
	Place joinery.Place
}
