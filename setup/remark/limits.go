package remark

import "fencecard/joinery"

// limit is one rule of the trade at which a maker is told something. Every
// condition that asks for it asks for the same row of the table.
type limit int

const (
	thinWall limit = iota
	webInLeg
	shortGrain
	narrowOnTable
	lowAtFence
	ownBearing
	deepWaste
	openFence
	largeBit
	nearShank
	overTable
	earlyMouth
	stopStep
	looseFit
	glueZone
	wideBit
	shankGrip
	limitCount
)

// limits says each limit as inch makers and as metric makers do, and what
// stands behind it.
var limits = [limitCount]struct {
	what   string
	in, mm joinery.Length
	basis  string
}{
	thinWall:      {"wood to leave beside a cut, or a third of the stock where that is less", joinery.Inch / 4, 6 * joinery.Millimetre, commonPractice},
	webInLeg:      {"wood to leave between two tenons in a leg", joinery.Inch / 8, 3 * joinery.Millimetre, commonPractice},
	shortGrain:    {"short grain to leave beyond a cut", joinery.Inch / 2, 12 * joinery.Millimetre, commonPractice},
	narrowOnTable: {"width that rides the table", 3 * joinery.Inch / 8, 9 * joinery.Millimetre, commonPractice},
	lowAtFence:    {"height that rides the fence", joinery.Inch / 4, 6 * joinery.Millimetre, commonPractice},
	deepWaste:     {"depth at an end that a saw takes off sooner", joinery.Inch, 25 * joinery.Millimetre, commonPractice},
	ownBearing:    {"width on the table and height at the fence that a cut along an edge leaves", 3 * joinery.Inch / 8, 9 * joinery.Millimetre, commonPractice},
	openFence:     {"length along the fence that bridges its opening", 6 * joinery.Inch, 150 * joinery.Millimetre, commonPractice},
	largeBit:      {"diameter over which a bit is slowed down", joinery.Inch, 254 * joinery.Millimetre / 10, commonPractice},
	overTable:     {"reach out from the bit beyond which a table hardly carries the work", 16 * joinery.Inch, 400 * joinery.Millimetre, commonPractice},
	earlyMouth:    {"how much too early the mouth of a dropped cut may begin, where no shoulder hides it", joinery.Inch / 16, 3 * joinery.Millimetre / 2, commonPractice},
	stopStep:      {"least height of a back stop that a tail can be held against, and the steps it is said in", joinery.Inch / 4, 6 * joinery.Millimetre, commonPractice},
	nearShank:     {"difference of two shanks whose collets are mistaken", joinery.Millimetre, joinery.Millimetre, "12 mm is 0.472 in (NIST SP 811): worked out"},
	looseFit:      {"gap beyond the shop's clearance that makes a joint loose", joinery.Inch / 64, 4 * joinery.Millimetre / 10, commonPractice},
	wideBit:       {"diameter of a bit that shapes edges over which the shop must say what its table lets turn", 3 * joinery.Inch / 2, 38 * joinery.Millimetre, commonPractice},
	shankGrip:     {"shank that stays in the collet", 3 * joinery.Inch / 4, 20 * joinery.Millimetre, commonPractice},
	glueZone:      {"width of a joint across the grain that may be glued", 3 * joinery.Inch, 75 * joinery.Millimetre, commonPractice},
}

// of returns the limit in the unit of a scale.
func (l limit) of(s joinery.Scale) joinery.Length {
	if s.Unit == joinery.Millimetres {
		return limits[l].mm
	}
	return limits[l].in
}

// wall is the least thickness of a wall in stock that thick.
func wall(stock joinery.Length, s joinery.Scale) joinery.Length {
	return min(thinWall.of(s), stock/3)
}

// tallShare is how many times as high as it is wide at the table a piece may be
// (common practice, no source).
const tallShare = joinery.Length(3)

// swingShare is how many times as far as it rides the fence the work may reach
// out from it (common practice, no source).
const swingShare = joinery.Length(4)

// stock is what furniture is made of, in one unit; what lies outside was
// likely typed in the other one (common practice, no source).
type stock struct {
	longest, shortest   joinery.Length // of a piece's longest dimension; 0: any
	thickest, thinnest  joinery.Length // of its shortest
	shallowest, nearest joinery.Length // depth and setback of a cut
	other               joinery.Unit
}

var stocks = map[joinery.Unit]stock{
	joinery.Inches: {longest: 12 * joinery.Foot, thickest: 6 * joinery.Inch, other: joinery.Millimetres},
	joinery.Millimetres: {shortest: 50 * joinery.Millimetre, thinnest: 2 * joinery.Millimetre,
		shallowest: joinery.Millimetre, nearest: joinery.Millimetre, other: joinery.Inches},
}
