package oblique

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/setup/solid"
)

const in = measure.Inch

// leg stands 20 high.
var leg = joinery.Size{2 * in, 2 * in, 20 * in}

// holeIn is a cut that opens on one side.
func holeIn(side joinery.Side) pictured {
	box := solid.Whole(leg)
	for d := range box {
		box[d].Lo, box[d].Hi = leg[d]/4, leg[d]/2
	}
	d := side.Dimension()
	if box[d].Lo = 0; side.High() {
		box[d].Lo, box[d].Hi = leg[d]/2, leg[d]
	}
	return pictured{box: box, sides: opensAt(box, leg)}
}

// A piece is seen from where most of its cuts show, and once more from behind where half
// of them would stay hidden.
func TestFromWhereAPieceIsSeen(t *testing.T) {
	const l, r, f, b, u, o = joinery.Left, joinery.Right, joinery.Front, joinery.Back, joinery.Bottom, joinery.Top
	for _, c := range []struct {
		cuts  []joinery.Side
		first [3]joinery.Side
		views int
	}{
		{[]joinery.Side{r}, [3]joinery.Side{r, f, o}, 1},
		{[]joinery.Side{l, u}, [3]joinery.Side{l, f, u}, 1},
		{[]joinery.Side{f, l, l, b}, [3]joinery.Side{l, f, o}, 1}, // one of four is dashed
		{[]joinery.Side{b}, [3]joinery.Side{r, f, o}, 2},
		{[]joinery.Side{l, r, b, f}, [3]joinery.Side{r, f, o}, 2},
	} {
		var cuts []pictured
		for _, side := range c.cuts {
			cuts = append(cuts, holeIn(side))
			assert.Equal(t, []joinery.Side{side}, cuts[len(cuts)-1].sides)
		}
		views := viewsOf(leg, cuts)
		assert.Equal(t, c.first, views[0].seen, c.cuts)
		assert.Len(t, views, c.views, c.cuts)
		for _, cut := range cuts {
			seen := views[0].shows(cut) || c.views == 2 && views[1].shows(cut)
			assert.True(t, seen || c.views == 1, c.cuts)
		}
	}
}

// Each end of a piece is drawn where it is: the top above, the right at the right, and
// from behind at the left. What is thin keeps a thickness.
func TestEachSideWhereItIs(t *testing.T) {
	middle := func(p pieceView, side joinery.Side) paper.Point {
		b := boxOf(p.face(solid.Whole(leg), side))
		return paper.At(b.X+b.W/2, b.Y+b.H/2)
	}
	ahead := newView(leg, [3]joinery.Side{joinery.Right, joinery.Front, joinery.Top}, false)
	behind := newView(leg, [3]joinery.Side{joinery.Left, joinery.Back, joinery.Bottom}, true)
	for _, p := range []pieceView{ahead, behind} {
		assert.Less(t, middle(p, joinery.Top).Y, middle(p, joinery.Bottom).Y)
		right := middle(p, joinery.Right).X > middle(p, joinery.Left).X
		assert.Equal(t, !p.behind, right)
		assert.Greater(t, p.long[joinery.LeftRight], p.long[joinery.TopBottom]/5, "a tenth in the wood")
		f := p.fitted(30, 40).frame()
		assert.InDelta(t, 40, float64(f.H), 1e-6)
		assert.LessOrEqual(t, f.W, paper.Paper(30))
	}
}

// Labels stand in the order of their cuts, apart and inside the height; where they have
// no room that is told.
func TestLabelsAreSpread(t *testing.T) {
	labelsAt := func(ys ...paper.Paper) []*labelled {
		var all []*labelled
		for _, y := range ys {
			all = append(all, &labelled{to: paper.At(0, y), text: paper.Block{W: 5, H: 3}})
		}
		return all
	}
	for _, c := range []struct {
		to   []paper.Paper
		h    paper.Paper
		room bool
	}{
		{nil, 10, true},
		{[]paper.Paper{5}, 10, true},
		{[]paper.Paper{9, 1, 5}, 12, true},
		{[]paper.Paper{10, 10, 10}, 10.3, true}, // pushed up from below
		{[]paper.Paper{1, 1, 1}, 9, false},
	} {
		all := labelsAt(c.to...)
		assert.Equal(t, c.room, spread(all, c.h), c)
		for i, l := range all {
			assert.LessOrEqual(t, l.y+3, c.h+paper.Touching, c)
			if i > 0 {
				assert.LessOrEqual(t, all[i-1].to.Y, l.to.Y, c)
				assert.GreaterOrEqual(t, l.y, all[i-1].y+3, c)
			}
			if c.room {
				assert.GreaterOrEqual(t, l.y, paper.Paper(0), c)
			}
		}
	}
}
