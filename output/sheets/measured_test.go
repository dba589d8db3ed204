package sheets

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/internal/render"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// smallPlan has pieces short enough to be drawn whole: a mortise stopped at
// both ends, a dado stopped at one, a rabbet with its bit buried in the fence,
// in inches and in millimetres.
func smallPlans() []string {
	const plan = `title: Blocks
unit: %s
shop:
  scale: %s
  bits:
  - {bit: narrow, kind: up-cut, diameter: %s, cutting: %s, plunges: yes}
  - {bit: wide, kind: straight, diameter: %s, cutting: %s, plunges: yes}
pieces:
- piece: block
  size: {left-right: %s, front-back: %s, top-bottom: %s}
  grain: top-bottom
  cuts:
  - {mortise: deep, in: right, width: %s, setback: %s from front, span: %s from top, depth: %s}
  - {dado: shelf, in: left, width: %s, setback: %s from bottom, span: 0 to %s from back, depth: %s}
  - {rabbet: edge, in: back, along: left, width: %s, depth: %s}
`
	inches := fmt.Sprintf(plan, "in", "1/64", "1/2", "2", "3/4", "2", "1 5/8", "2 1/4", "4",
		"1/2", "1/2", "1/2 to 2", "1", "3/4", "2 1/4", "1 3/4", "1/4", "3/8", "1/2")
	millimetres := fmt.Sprintf(plan, "mm", "0.1 mm", "12", "60", "20", "60", "40", "50", "90",
		"12", "12", "10 to 40", "20", "20", "40", "35", "8", "12", "10")
	return []string{inches, millimetres}
}

// within is how far a drawing may differ from the deck on paper.
const within = 0.5 // mm

// TestDrawingsAgreeWithTheDeck measures the drawings as they are rendered: the
// work at its start and stop, the bit, the channel and the depth are where the
// deck has them, at the scale the drawing names.
func TestDrawingsAgreeWithTheDeck(t *testing.T) {
	whole := 0
	for _, plan := range smallPlans() {
		d := planDeck(t, []byte(plan))
		for _, o := range []Pages{{}, {Paper: A4}} {
			pages, err := lay(d, o)
			require.NoError(t, err)
			doc := printed(t, d, o)
			all := drawingsOf(slices.Collect(pages))
			for i := range d.Setups {
				u := &d.Setups[i]
				all = all[1:] // the header's
				for k := range u.Runs {
					r := &u.Runs[k]
					t.Run(fmt.Sprintf("%s, card %s on %s", d.Plan.Unit, r.Number(), o.Paper), func(t *testing.T) {
						if m := measureDrawing(t, doc, all[1], u, r); m != nil {
							m.fromAbove()
							whole++
						}
						if m := measureDrawing(t, doc, all[2], u, r); m != nil {
							m.infeedEnd()
							whole++
						}
					})
					all = all[3:] // the piece in its place, from above, the section
				}
			}
		}
	}
	assert.GreaterOrEqual(t, whole, 20, "drawings that are whole")
}

// drawnAt is where a drawing stands.
type drawnAt struct {
	page int
	Box  paper.Box
}

// drawingsOf finds the drawings of a deck in their order.
func drawingsOf(pages []page) []drawnAt {
	var all []drawnAt
	for i, p := range pages {
		for _, q := range p.Parts {
			if q.Name == "drawing" {
				all = append(all, drawnAt{i, q.Box})
			}
		}
	}
	return all
}

// measured is one drawing as it is rendered.
type measured struct {
	t       *testing.T
	u       *deck.Setup
	c       *deck.Run
	Box     render.Box
	picture *render.Picture
	Scale   float64
	bit     render.Box   // of the bit's grey
	greys   [][2]float64 // places in it
}

// thickLine is what the ink of an outline is wide at least, so that it is told
// from thin lines and hatching; bitGrey is how dark the bit is.
const (
	thickLine = 0.4
	bitGrey   = 0.3
)

// measureDrawing renders a drawing, reads its scale and finds the bit in it. A
// drawing with parts left out is not measured.
func measureDrawing(t *testing.T, doc *render.Document, at drawnAt, u *deck.Setup, r *deck.Run) *measured {
	t.Helper()
	b := render.Box{Left: float64(at.Box.X), Top: float64(at.Box.Y), Right: float64(at.Box.Right()), Bottom: float64(at.Box.Bottom())}
	m := &measured{t: t, u: u, c: r, Box: b, picture: doc.Picture(at.page, 254, b)}
	for _, p := range doc.Pieces(at.page) {
		var size, whole float64
		if p.Box.Overlaps(b, 0) && strings.HasPrefix(p.Text, "scale") {
			if strings.Contains(p.Text, "shortened") {
				return nil
			}
			_, err := fmt.Sscanf(p.Text, "scale %f:%f", &size, &whole)
			require.NoError(t, err)
			m.Scale = size / whole
		}
	}
	require.NotZero(t, m.Scale, "the drawing names no scale")
	const dot = 0.1
	m.bit = render.Box{Left: math.Inf(1), Top: math.Inf(1), Right: math.Inf(-1), Bottom: math.Inf(-1)}
	for y := b.Top; y < b.Bottom; y += dot {
		for x := b.Left; x < b.Right; x += dot {
			if m.grey(x, y) {
				m.bit = render.Box{Left: min(m.bit.Left, x), Top: min(m.bit.Top, y), Right: max(m.bit.Right, x+patch), Bottom: max(m.bit.Bottom, y+patch)}
				m.greys = append(m.greys, [2]float64{x + patch/2, y + patch/2})
			}
		}
	}
	require.Less(t, m.bit.Left, m.bit.Right, "the bit was not found")
	return m
}

// patch is a square that, if it is all grey, is of the bit.
const patch = 0.3 // mm

func (m *measured) grey(x, y float64) bool {
	for dy := 0.0; dy <= patch; dy += patch / 4 {
		for dx := 0.0; dx <= patch; dx += patch / 4 {
			if math.Abs(m.picture.Ink(x+dx, y+dy)-bitGrey) > 0.02 {
				return false
			}
		}
	}
	return true
}

// circle returns the middle and the radius of the bit seen from above. Its
// centre lines and its outline cover some of its grey, evenly on all sides.
func (m *measured) circle() (x, y, radius float64) {
	for _, g := range m.greys {
		x += g[0] / float64(len(m.greys))
		y += g[1] / float64(len(m.greys))
	}
	for _, g := range m.greys {
		radius = max(radius, math.Hypot(g[0]-x, g[1]-y))
	}
	return x, y, radius + patch/2 + outline/2
}

// agree holds a place on paper against one at the machine, both from some
// other place.
func (m *measured) agree(atMachine, onPaper float64, what string) {
	m.t.Helper()
	assert.InDelta(m.t, atMachine*m.Scale, onPaper, within, what)
}

// line finds the middle of an outline or hidden line near a place.
func (m *measured) line(strokes []render.Stroke, near float64, what string) {
	m.t.Helper()
	best := math.Inf(1)
	for _, s := range strokes {
		if math.Abs(s.Middle-near) < math.Abs(best-near) {
			best = s.Middle
		}
	}
	assert.InDelta(m.t, near, best, within, what)
}

// outline is the thickness of the line round the bit, the inner half of which
// covers its grey.
const outline = 0.5

func (m *measured) fromAbove() {
	radius, centre := m.u.Bit.True().Millimetres()/2, m.u.Fence.Centre.Millimetres()
	long, section := m.c.Length.Millimetres(), m.c.Section()
	wide := section.Across.Millimetres()

	// The fence face is the first thick line from below, where nothing else is.
	faces := m.picture.Down(m.Box.Right-0.5, m.Box.Top, m.Box.Bottom)
	var face float64
	for _, s := range faces {
		if s.To-s.From > 0.6 && s.To-s.From < 0.9 {
			face = s.Middle
			break
		}
	}
	require.NotZero(m.t, face, "the fence face was not found")

	middle, across, drawn := m.circle()
	m.agree(radius, drawn, "the bit's radius")
	m.agree(centre, across-face, "the fence to the bit's centre")

	row := m.picture.Across(face+0.93*wide*m.Scale, m.Box.Left, m.Box.Right)
	var solid []render.Stroke
	for _, s := range row {
		if s.To-s.From > thickLine {
			solid = append(solid, s)
		}
	}
	if start := m.c.Start; start != nil {
		lead := middle - start.LeadPastCentre.Millimetres()*m.Scale
		m.line(solid, lead, "the leading end at the start")
		m.line(solid, lead+long*m.Scale, "the tail end at the start")
		var block []render.Stroke
		for _, s := range m.picture.Across(face+float64(blockWide)/2, m.Box.Left, m.Box.Right) {
			if s.To-s.From > thickLine {
				block = append(block, s)
			}
		}
		m.line(block, lead+long*m.Scale+float64(blockWide), "the far side of the back stop")
	} else if len(solid) >= 2 {
		m.agree(long, solid[len(solid)-1].Middle-solid[0].Middle, "the length of the work")
	}
	if stop := m.c.Stop; stop != nil {
		lead := middle - stop.LeadPastCentre.Millimetres()*m.Scale
		var dashed []render.Stroke
		for share := 0.75; share < 0.97; share += 0.02 {
			dashed = append(dashed, m.picture.Across(face+share*wide*m.Scale, m.Box.Left, m.Box.Right)...)
		}
		m.line(dashed, lead, "the leading end at the stop")
		m.line(dashed, lead+long*m.Scale, "the tail end at the stop")
	}
	m.channelFromAbove(face, solid)
}

// channelFromAbove looks for the walls of the channel, dashed lines, in a part
// of the work where nothing else is.
func (m *measured) channelFromAbove(face float64, solid []render.Stroke) {
	require.NotEmpty(m.t, solid)
	lead := solid[0].Middle
	if m.c.Start != nil {
		middle, _, _ := m.circle()
		lead = middle - m.c.Start.LeadPastCentre.Millimetres()*m.Scale
	}
	section := m.c.Section()
	from, to := lead+m.c.A.Millimetres()*m.Scale, lead+m.c.B.Millimetres()*m.Scale
	var walls []render.Stroke
	for _, share := range []float64{0.6, 0.62, 0.64, 0.66, 0.68} {
		walls = append(walls, m.picture.Down(from+share*(to-from), face-1, m.Box.Bottom)...)
	}
	m.line(walls, face+section.Near.Millimetres()*m.Scale, "the near wall")
	m.line(walls, face+section.Far.Millimetres()*m.Scale, "the far wall")
	m.line(walls, face+section.Across.Millimetres()*m.Scale, "the far side of the work")
}

func (m *measured) infeedEnd() {
	section := m.c.Section()
	up, across, depth := section.Up.Millimetres(), section.Across.Millimetres(), section.Depth.Millimetres()
	near, diameter := m.u.Fence.NearEdge.Millimetres(), m.u.Bit.True().Millimetres()

	m.agree(diameter, m.bit.Right-m.bit.Left+outline, "the bit's diameter")
	face := m.bit.Right + outline/2 + near*m.Scale
	top := m.bit.Top - outline/2
	table := top + depth*m.Scale
	// Thick lines only: the surface that is cut is hatched.
	thick := func(strokes []render.Stroke) []render.Stroke {
		var all []render.Stroke
		for _, s := range strokes {
			if s.To-s.From > thickLine {
				all = append(all, s)
			}
		}
		return all
	}
	row := thick(m.picture.Across(table-(depth+up)/2*m.Scale, m.Box.Left, m.Box.Right))
	m.line(row, face, "the fence face")
	m.line(row, face-across*m.Scale, "the far side of the work")
	beside := face - (across-1/m.Scale)*m.Scale
	column := thick(m.picture.Down(beside, m.Box.Top, m.Box.Bottom))
	m.line(column, table, "the table")
	m.line(column, table-up*m.Scale, "the upper side of the work")
}
