package sheets

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// slenderDeck is a leg with a mortise so deep that it takes many heights, by a
// bit so worn that it takes two fence positions, off the scale.
func slenderDeck(t testing.TB) *deck.Deck {
	t.Helper()
	return planDeck(t, []byte(`
unit: in
wood: cherry
shop:
  stops: blocks
  fence: {infeed: 16, outfeed: 16, reach: 9}
  bits:
    - {bit: worn quarter, kind: up-cut, diameter: 1/4, measured: 0.246, cutting: 1, plunges: yes}
pieces:
  - piece: left front leg
    size: {left-right: 1, front-back: 7/8, top-bottom: 40}
    cuts:
      - {mortise: rail, in: back, width: 1/4, setback: 5/16 from left, span: 1/2 to 4 1/4 from top, depth: 3/4}
`))
}

// TestSlenderPieceShowsItsSides draws a leg forty times as long as it is wide
// in the room that an index card has for it, and in that of a whole sheet.
func TestSlenderPieceShowsItsSides(t *testing.T) {
	_, r := stoppedCard(t, slenderDeck(t))
	for _, room := range []paper.Box{{W: 18, H: 23}, {W: 45, H: 42}} {
		p := pictured(r, paper.Block{}, room.W, room.H)
		frame := p.around(r, paper.Block{})
		assert.LessOrEqual(t, float64(frame.W), float64(room.W))
		assert.LessOrEqual(t, float64(frame.H), float64(room.H))
		assert.GreaterOrEqual(t, float64(slices.Min(p.Long[:])), 4.0, "%v: a side to see what is cut in it", room)
	}
}

// TestMarksStandBesideTheOrders finds the marks of a stopped cut on the first
// of its cards, with the sides and the fence distance, in the smallest format.
func TestMarksStandBesideTheOrders(t *testing.T) {
	d := slenderDeck(t)
	u, r := stoppedCard(t, d)
	s, err := newSetter(d, Pages{Paper: Index})
	require.NoError(t, err)
	first := paper.Said(s.card(u, r)[0])
	for _, words := range []string{"side down", "FENCE to near edge", "START:", "STOP:"} {
		assert.Contains(t, first, words)
	}
}

// TestHeaderKeepsToOneSmallCard sets the twelve cards of a setup in two columns
// where one would run over on a second card for a single line.
func TestHeaderKeepsToOneSmallCard(t *testing.T) {
	d := exampleDecks(t)[0].deck
	s, err := newSetter(d, Pages{PerPage: 2})
	require.NoError(t, err)
	require.Len(t, d.Setups[2].Runs, 12)
	header := s.header(d, 2)
	require.Len(t, header, 1)
	for i := range d.Setups[2].Runs {
		r := &d.Setups[2].Runs[i]
		assert.Contains(t, SaidOnCard(header), r.Number()+" "+r.Piece.Name)
	}
}

// levelLines is a canvas that keeps the level lines drawn on it.
type levelLines struct {
	paper.Recorder
	level [][2]paper.Point
}

func (l *levelLines) Stroke(_ paper.Pen, path ...paper.Point) {
	for i := 1; i < len(path); i++ {
		if a, b := path[i-1], path[i]; a.Y == b.Y && a.X != b.X {
			l.level = append(l.level, [2]paper.Point{a, b})
		}
	}
}

// TestNoLineStrikesThroughAFenceDistance draws fences with bits so small that
// their distances lie closer together than letters are high.
func TestNoLineStrikesThroughAFenceDistance(t *testing.T) {
	d := railDeck(t)
	s, err := newSetter(d, Pages{Paper: Index})
	require.NoError(t, err)
	for i := range d.Setups {
		u := d.Setups[i]
		for _, near := range []string{"0", "1mm", "7mm", "40mm"} {
			radius := u.Bit.True() / 2
			u.Fence.NearEdge = in(t, near)
			u.Fence.Centre, u.Fence.FarEdge = u.Fence.NearEdge+radius, u.Fence.NearEdge+2*radius
			b := s.fenceDrawing(&u, s.cells[0].W)
			on := &levelLines{}
			paper.Paint(on, b.Parts)
			for _, p := range b.Parts {
				if !p.Words() || strings.HasPrefix(p.Says, "scale") {
					continue
				}
				for _, l := range on.level {
					across := max(l[0].X, l[1].X) > p.Box.X && min(l[0].X, l[1].X) < p.Box.Right()
					within := l[0].Y > p.Box.Y+0.5 && l[0].Y < p.Box.Bottom()-0.5
					assert.False(t, across && within, "%s of %s: a line through %q", near, joinery.MetricScale.Format(2*radius), p.Says)
				}
			}
		}
	}
}
