package joinery

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
)

// shelf is 3/4 thick, 6 deep and 24 long.
func shelf(cuts ...Cut) *Piece {
	return &Piece{Name: "shelf", Size: Size{24 * measure.Inch, 6 * measure.Inch, eighths(6)}, Grain: LeftRight, Cuts: cuts}
}

// rounded is the lower (or upper) front edge rounded.
func rounded(name string, down Side, radius, raise, reach measure.Length) Cut {
	return Cut{Kind: &Profile, Name: name, Moulding: &Moulding{Down: down, Fence: Front, Outline: &Outline{Shape: Round, Radius: radius}, Raise: raise, Reach: reach}}
}

// A quarter round of 1/4 takes a block of 1/4 by 1/4 off the arris, from end to end. The
// fence stands forward of the pilot by what the reach is less than the whole.
func TestARoundedEdge(t *testing.T) {
	got := lay(t, shelf(), rounded("edge", Bottom, eighths(2), 0, 0))
	require.Len(t, got, 1)
	c := got[0]
	assert.Equal(t, []measure.Length{0, eighths(2), eighths(2), 0, 24 * measure.Inch}, []measure.Length{c.Setback, c.Width, c.Depth, c.Lo, c.Hi})
	assert.Equal(t, [2]Side{Bottom, Front}, [2]Side{c.Down, c.Near})
	assert.Zero(t, c.Section.Forward)

	// Over the face it reaches 1/8 in only: the fence comes forward by the other eighth.
	c = lay(t, shelf(), rounded("edge", Bottom, eighths(2), 0, eighths(1)))[0]
	assert.Equal(t, eighths(1), c.Section.Forward)
	assert.Equal(t, eighths(1), c.Width)
}

func TestEdgesThatCannotBeShaped(t *testing.T) {
	faults := func(p *Piece, c Cut) string {
		err := c.Lay(p, measure.InchScale).Err()
		if err == nil {
			return ""
		}
		return err.Error()
	}
	hair := measure.Inch / 64
	for _, test := range []struct{ raise, reach, radius measure.Length }{
		{0, 0, eighths(2)}, {0, eighths(2), eighths(2)}, {eighths(6) - 3*measure.Inch/16, 0, eighths(2)},
	} {
		assert.Empty(t, faults(shelf(), rounded("edge", Bottom, test.radius, test.raise, test.reach)), test)
	}
	assert.Contains(t, faults(shelf(), rounded("edge", Bottom, eighths(2), eighths(6)+hair, 0)), "higher than the piece is thick")
	assert.Contains(t, faults(shelf(), rounded("edge", Bottom, eighths(2), 0, eighths(2)+hair)), "the bit reaches 1/4 in over the face, not 17/64 in")
	// 3/16 in is left flat above it to ride the fence, or a hair less.
	assert.Contains(t, faults(shelf(), rounded("edge", Bottom, eighths(2), eighths(6)-3*measure.Inch/16+hair, 0)), "only 11/64 in of the edge stays flat")

	narrow := shelf()
	narrow.Size[FrontBack] = eighths(2)
	assert.Empty(t, faults(narrow, rounded("edge", Bottom, eighths(2), 0, 0)))
	narrow.Size[FrontBack] = eighths(2) - hair
	assert.Contains(t, faults(narrow, rounded("edge", Bottom, eighths(2), 0, 0)), "over a face that measures 15/64 in")
}

// What is shaped on the same edge from the other face takes from the flat between them,
// where they run beside each other; what comes later in the plan is held to it then.
func TestTwoShapesOnOneEdge(t *testing.T) {
	both := func(upper, lower measure.Length, span Span) string {
		p := shelf(rounded("upper", Top, upper, 0, 0), rounded("lower", Bottom, lower, 0, 0))
		p.Cuts[1].Span = span
		if err := p.LayAll(measure.InchScale).Err(); err != nil {
			return err.Error()
		}
		return ""
	}
	assert.Empty(t, both(eighths(2), eighths(2), Span{}), "a quarter is left")
	assert.Contains(t, both(eighths(3), eighths(2), Span{}), `only 1/8 in of the edge stays flat between it and "upper"`)
	assert.Contains(t, both(eighths(3), eighths(2), Span{To: 4 * measure.Inch, Side: Left}), "stays flat")

	p := shelf(rounded("upper", Top, eighths(3), 0, 0), rounded("lower", Bottom, eighths(2), 0, 0))
	p.Cuts[0].Span = Span{To: 12 * measure.Inch, Side: Left}
	p.Cuts[1].Span = Span{To: 12 * measure.Inch, Side: Right}
	assert.Empty(t, p.LayAll(measure.InchScale), "one ends where the other begins")

	p = shelf(rounded("front", Top, eighths(3), 0, 0), rounded("back", Bottom, eighths(3), 0, 0))
	p.Cuts[1].Moulding.Fence = Back
	assert.Empty(t, p.LayAll(measure.InchScale), "on other edges they do not meet")
}

// A panel is shaped on its four edges, each as deep as it is thick less what is left.
func TestARaisedPanel(t *testing.T) {
	panel := func(leaves measure.Length) Cut {
		return Cut{Kind: &RaisedPanel, Name: "field", In: Top, Moulding: &Moulding{Leaves: leaves,
			Outline: &Outline{Shape: Drawn, Corners: []Corner{{0, eighths(3)}, {eighths(2), measure.Inch}}}}}
	}
	channels := lay(t, shelf(), panel(eighths(2)))
	require.Len(t, channels, 4)
	for i, side := range []Side{Left, Right, Front, Back} {
		c := channels[i]
		assert.Equal(t, [2]Side{Top, side}, [2]Side{c.Down, c.Near})
		assert.Equal(t, eighths(4), c.Depth)
		assert.Equal(t, measure.Inch, c.Width)
		assert.True(t, c.EndToEnd(shelf().Size))
	}
	whole := panel(eighths(6))
	assert.ErrorContains(t, whole.Lay(shelf(), measure.InchScale).Err(), "so nothing is raised")
	thin := panel(eighths(6) - 1)
	assert.NotContains(t, thin.Lay(shelf(), measure.InchScale).Error(), "so nothing is raised")
}
