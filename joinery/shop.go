package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
)

// Shop is what the maker's table, fence and bits allow.
type Shop struct {
	Name    string // "built-in shop", or the file it came from
	Fence   FenceReach
	Lift    measure.Length // greatest height of the bit above the table; 0 when not said
	Scale   measure.Scale
	Minutes Minutes
	Stops   Stops
	Cross   Crossing
	Gentle  bool           // passes no deeper than a careful maker takes
	Raises  bool           // the turning bit may be raised into clamped work
	Opening measure.Length // diameter of the widest bit that table and fence let turn; 0 when not said
	Bite    measure.Length // the most wood of one pass that shapes an edge, as a strip 1 mm wide ([measure.Strip]); 0: by the wood
	Share   timber.Share   // the shop's own depth of pass as a share of the bit; zero: by the wood
	Bits    []Bit
	Example bool          // the bits are those of the shop that the program carries
	Woods   []timber.Wood // the maker's own, looked up before the table

	Speed     int            // the router's own highest speed, rpm; 0 when not said
	Base      measure.Length // width of a hand-held router's base across the bit; 0 when not said
	Clearance Clearance
	Rules     Rules
	Place     plantext.Place
}

// Clearance is the room left in a joint: at the two cheeks of a tenon
// together, and beyond its end.
type Clearance struct {
	Cheek, Length measure.Length
}

// DefaultClearance is 0.005 in at the cheeks and 1/16 in beyond the end, or
// 0.1 mm and 1.5 mm (common practice, no source).
func DefaultClearance(u measure.Unit) Clearance {
	if u == measure.Millimetres {
		return Clearance{Cheek: measure.Millimetre / 10, Length: 3 * measure.Millimetre / 2}
	}
	return Clearance{Cheek: 5 * measure.Inch / 1000, Length: measure.Inch / 16}
}

// Rules are the shop rules that a maker may change; no regulator gives a
// figure for any.
type Rules struct {
	ShortPiece   measure.Length // a shorter piece is not fed by hand alone
	HandDistance measure.Length // hands stay this far from the bit
	ThinFloor    measure.Length // a thinner floor is not left below a cut
}

// DefaultRules are 12, 4 and 1/8 in, or 300, 100 and 3 mm (common practice, no
// source).
func DefaultRules(u measure.Unit) Rules {
	if u == measure.Millimetres {
		return Rules{ShortPiece: 300 * measure.Millimetre, HandDistance: 100 * measure.Millimetre, ThinFloor: 3 * measure.Millimetre}
	}
	return Rules{ShortPiece: 12 * measure.Inch, HandDistance: 4 * measure.Inch, ThinFloor: measure.Inch / 8}
}

// FenceReach is the usable fence each side of the bit's centre, and the
// greatest distance from the fence to the bit's centre; 0 when not said.
type FenceReach struct {
	Infeed, Outfeed, Reach measure.Length
}

// Time is a span of time in thousandths of a minute, so that costs compare
// exactly.
type Time int64

// Minute is one minute.
const Minute Time = 1000

// Minutes gives the time in minutes, for printing.
func (t Time) Minutes() float64 { return float64(t) / float64(Minute) }

// Minutes is the time one change of each kind takes, its test cut included, and
// what the cutting takes.
type Minutes struct {
	Bit, Fence, Height, Stop Time

	Pass Time // one pass of one piece
	Fit  Time // the trial for a channel whose two walls come from two settings instead of the bit
}

// Stops is how a shop sets where a cut begins and ends.
type Stops uint8

// Marks are pencil or tape marks on the fence, set once per setup; blocks are
// clamped for each run.
const (
	Marks Stops = iota
	Blocks
)

// String gives the word a shop file uses.
func (s Stops) String() string {
	if s == Blocks {
		return "blocks"
	}
	return "marks"
}
