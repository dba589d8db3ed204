package trade

import (
	"fencecard/joinery/measure"
)

// Limit is one rule of the trade at which a maker is told something. Every
// condition that asks for it asks for the same row of the table.
type Limit int

// The limits. What each limits is said in its row.
const (
	ThinWall Limit = iota
	WebInLeg
	ShortGrain
	NarrowOnTable
	LowAtFence
	OwnBearing
	EndGone
	DeepWaste
	OpenFence
	LargeBit
	NearShank
	OverTable
	LongAcross
	EarlyMouth
	StopStep
	LooseFit
	GlueZone
	WideBit
	ShankGrip
	limitCount
)

// Row says a limit as inch makers and as metric makers do, and what stands
// behind it.
type Row struct {
	What   string
	In, MM measure.Length
	Basis  string
}

// Limits lists every limit.
func Limits() []Row { return limits[:] }

var limits = [limitCount]Row{
	ThinWall:      {"wood to leave beside a cut, or a third of the stock where that is less", measure.Inch / 4, 6 * measure.Millimetre, CommonPractice},
	WebInLeg:      {"wood to leave between two tenons in a leg", measure.Inch / 8, 3 * measure.Millimetre, CommonPractice},
	ShortGrain:    {"short grain to leave beyond a cut", measure.Inch / 2, 12 * measure.Millimetre, CommonPractice},
	NarrowOnTable: {"width that rides the table", 3 * measure.Inch / 8, 9 * measure.Millimetre, CommonPractice},
	LowAtFence:    {"height that rides the fence", measure.Inch / 4, 6 * measure.Millimetre, CommonPractice},
	DeepWaste:     {"depth at an end that a saw takes off sooner", measure.Inch, 25 * measure.Millimetre, CommonPractice},
	OwnBearing:    {"width on the table and height at the fence that a cut along an edge leaves", 3 * measure.Inch / 8, 9 * measure.Millimetre, CommonPractice},
	EndGone:       {"length of an end cut away over which it is missed on the table and at the fence", 3 * measure.Inch / 4, 20 * measure.Millimetre, CommonPractice},
	OpenFence:     {"length along the fence that bridges its opening", 6 * measure.Inch, 150 * measure.Millimetre, CommonPractice},
	LargeBit:      {"diameter over which a bit is slowed down", measure.Inch, 254 * measure.Millimetre / 10, CommonPractice},
	OverTable:     {"reach out from the bit beyond which a table hardly carries the work", 16 * measure.Inch, 400 * measure.Millimetre, CommonPractice},
	LongAcross:    {"reach out from the fence of an end's work that one person does not hold square", 40 * measure.Inch, 1000 * measure.Millimetre, CommonPractice},
	EarlyMouth:    {"how much too early the mouth of a dropped cut may begin, where no shoulder hides it", measure.Inch / 16, 3 * measure.Millimetre / 2, CommonPractice},
	StopStep:      {"least height of a back stop that a tail can be held against, and the steps it is said in", measure.Inch / 4, 6 * measure.Millimetre, CommonPractice},
	NearShank:     {"difference of two shanks whose collets are mistaken", measure.Millimetre, measure.Millimetre, "12 mm is 0.472 in (NIST SP 811): worked out"},
	LooseFit:      {"gap beyond the shop's clearance that makes a joint loose", measure.Inch / 64, 4 * measure.Millimetre / 10, CommonPractice},
	WideBit:       {"diameter of a bit that shapes edges over which the shop must say what its table lets turn", 3 * measure.Inch / 2, 38 * measure.Millimetre, CommonPractice},
	ShankGrip:     {"shank that stays in the collet", 3 * measure.Inch / 4, 20 * measure.Millimetre, CommonPractice},
	GlueZone:      {"width of a joint across the grain that may be glued", 3 * measure.Inch, 75 * measure.Millimetre, CommonPractice},
}

// Of returns the limit in the unit of a scale.
func (l Limit) Of(s measure.Scale) measure.Length {
	if s.Unit == measure.Millimetres {
		return limits[l].MM
	}
	return limits[l].In
}

// Wall is the least thickness of a wall in stock that thick.
func Wall(stock measure.Length, s measure.Scale) measure.Length {
	return min(ThinWall.Of(s), stock/3)
}

// TallShare is how many times as high as it is wide at the table a piece may be
// (common practice, no source).
const TallShare = measure.Length(2)

// EdgeShare is how many times as high as what a cut leaves of it on the table work may
// stand that could lie (common practice, no source).
const EdgeShare = measure.Length(8)

// SlenderShare is how many times as high as it is thick a bit may be raised (common
// practice, no source).
const SlenderShare = measure.Length(5)

// SwingShare is how many times as far as it rides the fence the work may reach
// out from it (common practice, no source).
const SwingShare = measure.Length(4)
