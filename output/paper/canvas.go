package paper

import "math"

// Paper is a length on paper in millimetres. Lengths in wood are exact and of
// another type, [measure.Length]; a drawing's scale turns one into the other.
type Paper float64

// Millimetre and Inch are units of length on paper.
const (
	Millimetre Paper = 1
	Inch       Paper = 25.4
)

// Point is a place on a page, from its top left corner, y downward.
type Point struct{ X, Y Paper }

// At is the point at x and y.
func At(x, y Paper) Point { return Point{x, y} }

// Add returns the point moved right and down.
func (p Point) Add(right, down Paper) Point { return Point{p.X + right, p.Y + down} }

// Box is a rectangle on a page: its top left corner, width and height.
type Box struct{ X, Y, W, H Paper }

// Right returns the x of the right edge.
func (b Box) Right() Paper { return b.X + b.W }

// Bottom returns the y of the bottom edge.
func (b Box) Bottom() Paper { return b.Y + b.H }

// Inset returns the box made smaller by a margin on all four edges.
func (b Box) Inset(by Paper) Box { return Box{b.X + by, b.Y + by, b.W - 2*by, b.H - 2*by} }

// Corner returns the top left corner.
func (b Box) Corner() Point { return Point{b.X, b.Y} }

// Path returns the box's outline, closed.
func (b Box) Path() []Point {
	return []Point{{b.X, b.Y}, {b.Right(), b.Y}, {b.Right(), b.Bottom()}, {b.X, b.Bottom()}, {b.X, b.Y}}
}

// Touching is how far two boxes may reach into each other and still count as
// neighbours; it swallows rounding.
const Touching Paper = 0.01

// Overlaps reports whether two boxes share more than an edge.
func (b Box) Overlaps(c Box) bool {
	return b.X+Touching < c.Right() && c.X+Touching < b.Right() &&
		b.Y+Touching < c.Bottom() && c.Y+Touching < b.Bottom()
}

// Holds reports whether a box lies inside this one.
func (b Box) Holds(c Box) bool {
	return c.X >= b.X-Touching && c.Y >= b.Y-Touching &&
		c.Right() <= b.Right()+Touching && c.Bottom() <= b.Bottom()+Touching
}

// Line is a kind of line, after ISO 128-2.
type Line uint8

// The lines of a drawing.
const (
	Solid               Line       = iota // type 01, continuous
	Dashed                                // type 02: hidden edges
	LongDashDot                           // type 04: centre lines
	LongDashDoubleDot                     // type 05: another position of a moving part
	Dotted                                // type 07: what only leads the eye
	dashUnit            = Paper(1)        // one dash-and-gap unit; ISO 128-2 scales it with the pen
	longDash, dash, gap = 6 * dashUnit, 3 * dashUnit, 1 * dashUnit
	dot                 = 0.4 * dashUnit
)

var dashes = [...][]Paper{
	Solid:             nil,
	Dashed:            {dash, gap},
	LongDashDot:       {longDash, gap, dot, gap},
	LongDashDoubleDot: {longDash, gap, dot, gap, dot, gap},
	Dotted:            {dot, gap},
}

// Pen is how a line is drawn.
type Pen struct {
	Width Paper // of the series 0.13, 0.18, 0.25, 0.35, 0.5, 0.7, 1 (ISO 128-2)
	Line  Line
}

// Shade is how dark a filled shape is: 0 white, 1 black.
type Shade float64

// Shades that survive a bad photocopy. Nothing is told by a shade alone.
const (
	White Shade = 0
	Pale  Shade = 0.12
	Mid   Shade = 0.3
	Black Shade = 1
)

// Letters is how a line of text is set.
type Letters struct {
	Face   Face
	Height Paper // of a capital letter (ISO 3098-1: 2.5, 3.5, 5, 7, 10, ...)
	Upward bool  // turned to read upward, from the right of the sheet (ISO 129-1)
	White  bool  // white on a black ground
}

// Canvas is what pages are drawn on. Every call stands by itself: no pen,
// colour or place is kept from one to the next.
type Canvas interface {
	// Page begins a new page of that width and height.
	Page(width, height Paper)
	// Stroke draws a line through the points; repeat the first to close it.
	Stroke(pen Pen, path ...Point)
	// Fill fills the polygon with the points for corners.
	Fill(shade Shade, path ...Point)
	// Circle fills a circle and draws its outline; a pen of width 0 draws none.
	Circle(centre Point, radius Paper, shade Shade, pen Pen)
	// Text sets one line of text with the left end of its baseline at a point.
	Text(at Point, letters Letters, text string)
	// Said paints something that reads as a text which its parts, taken one by
	// one, do not say: the figures of a built fraction as "1 5/8". A reader that
	// copies, searches or speaks the page gets that text.
	Said(text string, paint func())
}

// Arc returns points along a circle from one angle to another, in degrees
// anticlockwise from the right as seen on the page.
func Arc(centre Point, radius Paper, from, to float64) []Point {
	n := max(2, int(math.Ceil(math.Abs(to-from)/7.5)))
	path := make([]Point, n+1)
	for i := range path {
		a := (from + (to-from)*float64(i)/float64(n)) * math.Pi / 180
		path[i] = centre.Add(radius*Paper(math.Cos(a)), -radius*Paper(math.Sin(a)))
	}
	return path
}

// Arrowhead returns a closed, slender head (ISO 129-1) with its tip at a point,
// pointing along (dx, dy), which must not both be 0.
func Arrowhead(tip Point, dx, dy, length Paper) []Point {
	n := Paper(math.Hypot(float64(dx), float64(dy)))
	dx, dy = dx/n*length, dy/n*length
	const half = 0.18 // half the width as a share of the length
	return []Point{tip, tip.Add(-dx-half*dy, -dy+half*dx), tip.Add(-dx+half*dy, -dy-half*dx)}
}
