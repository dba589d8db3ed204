package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
)

// The worked examples were calculated by hand before there was a program.

func leg(t testing.TB) joinery.Size {
	return joinery.Size{in(t, "1 5/8"), in(t, "1 5/8"), in(t, "17")}
}

func legMortise(t testing.TB, side joinery.Side) joinery.Cut {
	return joinery.Cut{
		Kind: &joinery.Mortise, Name: "seat rail", In: side,
		Width: in(t, "3/8"), Depth: in(t, "1"),
		Start: joinery.Setback{Distance: in(t, "1/2"), From: joinery.Front},
		Span:  joinery.Span{From: in(t, "1/2"), To: in(t, "3"), Side: joinery.Top},
	}
}

// marks writes a mark's five numbers in inches, in the order of the fields.
func marks(t testing.TB, texts ...string) *setup.Mark {
	n := make([]joinery.Length, 5)
	for i, text := range texts {
		n[i] = in(t, text)
	}
	return &setup.Mark{Line: n[0], LeadPastEdge: n[1], LeadPastCentre: n[2], TailBeforeEdge: n[3], TailBeforeCentre: n[4]}
}

func TestWorkedExampleLegMortise(t *testing.T) {
	d := deckOf(t, planOf(t, joinery.Inches, leg(t), legMortise(t, joinery.Right), bitOf(in(t, "3/8"))))
	require.Len(t, d.Setups, 1)
	require.Len(t, d.Setups[0].Cards, 1)
	c := d.Setups[0].Cards[0]
	assert.Equal(t, joinery.Right, c.Run.Down)
	assert.Equal(t, joinery.Front, c.Run.Fence)
	assert.Equal(t, joinery.Top, c.Leads)
	assert.Equal(t, in(t, "1/2"), c.A)
	assert.Equal(t, in(t, "3"), c.B)
	assert.Equal(t, setup.Fence{NearEdge: in(t, "1/2"), Centre: in(t, "11/16"), FarEdge: in(t, "7/8")}, d.Setups[0].Fence)
	assert.Equal(t, setup.Drop, c.Begin)
	assert.Equal(t, setup.Lift, c.End)
	assert.Equal(t, marks(t, "1/2", "1/2", "11/16", "16 1/2", "16 5/16"), c.Start)
	assert.Equal(t, marks(t, "3", "3", "2 13/16", "14", "14 3/16"), c.Stop)
	assert.Equal(t, in(t, "2 1/8"), c.Travel())
}

func TestWorkedExampleMirroredLeg(t *testing.T) {
	plan := planOf(t, joinery.Inches, leg(t), legMortise(t, joinery.Right), bitOf(in(t, "3/8")))
	plan.Pieces = append(plan.Pieces, plan.Pieces[0].Mirrored("mirror", joinery.LeftRight, plan.Shop.Scale))
	d := deckOf(t, plan)
	require.Len(t, d.Setups, 1, "mirrored legs share their setup")
	require.Len(t, d.Setups[0].Cards, 2)
	c := d.Setups[0].Cards[1]
	assert.Equal(t, joinery.Left, c.Run.Down)
	assert.Equal(t, joinery.Front, c.Run.Fence)
	assert.Equal(t, joinery.Bottom, c.Leads)
	assert.Equal(t, in(t, "14"), c.A)
	assert.Equal(t, in(t, "16 1/2"), c.B)
	assert.Equal(t, marks(t, "14", "14", "14 3/16", "3", "2 13/16"), c.Start)
	assert.Equal(t, marks(t, "16 1/2", "16 1/2", "16 5/16", "1/2", "11/16"), c.Stop)
}

func TestWorkedExampleStoppedDado(t *testing.T) {
	dado := joinery.Cut{
		Kind: &joinery.Dado, Name: "shelf", In: joinery.Right,
		Width: in(t, "3/4"), Depth: in(t, "1/4"),
		Start: joinery.Setback{Distance: in(t, "4"), From: joinery.Bottom},
		Span:  joinery.Span{From: 0, To: in(t, "1 1/4"), Side: joinery.Back},
	}
	d := deckOf(t, planOf(t, joinery.Inches, leg(t), dado, bitOf(in(t, "3/4"))))
	c := d.Setups[0].Cards[0]
	assert.Equal(t, joinery.Right, c.Run.Down)
	assert.Equal(t, joinery.Bottom, c.Run.Fence)
	assert.Equal(t, joinery.Front, c.Leads)
	assert.Equal(t, in(t, "1 5/8"), c.Length)
	assert.Equal(t, in(t, "3/8"), c.A)
	assert.Equal(t, in(t, "1 5/8"), c.B)
	require.NotNil(t, c.Start)
	assert.Equal(t, in(t, "3/8"), c.Start.LeadPastEdge)
	assert.Equal(t, in(t, "3/4"), c.Start.LeadPastCentre)
	assert.Equal(t, setup.RunOut, c.End)
	assert.Nil(t, c.Stop)
}

func TestWorkedExampleMetricRail(t *testing.T) {
	size := joinery.Size{mm(t, "640"), mm(t, "20"), mm(t, "90")}
	groove := joinery.Cut{
		Kind: &joinery.Groove, Name: "panel", In: joinery.Back,
		Width: mm(t, "8"), Depth: mm(t, "9"),
		Start: joinery.Setback{Distance: mm(t, "10"), From: joinery.Bottom},
		Span:  joinery.Span{From: mm(t, "30"), To: mm(t, "590"), Side: joinery.Left},
	}
	d := deckOf(t, planOf(t, joinery.Millimetres, size, groove, bitOf(mm(t, "6"))))
	require.Len(t, d.Setups, 2)
	assert.Equal(t, setup.Fence{NearEdge: mm(t, "10"), Centre: mm(t, "13"), FarEdge: mm(t, "16")}, d.Setups[0].Fence)
	assert.Equal(t, setup.Fence{NearEdge: mm(t, "12"), Centre: mm(t, "15"), FarEdge: mm(t, "18")}, d.Setups[1].Fence)
	for _, s := range d.Setups {
		c := s.Cards[0]
		assert.Equal(t, joinery.Back, c.Run.Down)
		assert.Equal(t, joinery.Bottom, c.Run.Fence)
		assert.Equal(t, joinery.Right, c.Leads)
		assert.Equal(t, mm(t, "50"), c.A)
		assert.Equal(t, mm(t, "610"), c.B)
		assert.Equal(t, mm(t, "50"), c.Start.LeadPastEdge)
		assert.Equal(t, mm(t, "53"), c.Start.LeadPastCentre)
		assert.Equal(t, mm(t, "610"), c.Stop.LeadPastEdge)
		assert.Equal(t, mm(t, "607"), c.Stop.LeadPastCentre)
	}
}

// The six rows of the table of orientations, and the other eighteen by the
// determinant of the three directions.
func TestLeads(t *testing.T) {
	rows := []struct{ down, fence, leads joinery.Side }{
		{joinery.Right, joinery.Front, joinery.Top},
		{joinery.Left, joinery.Front, joinery.Bottom},
		{joinery.Right, joinery.Back, joinery.Bottom},
		{joinery.Back, joinery.Top, joinery.Left},
		{joinery.Back, joinery.Bottom, joinery.Right},
		{joinery.Top, joinery.Front, joinery.Left},
	}
	for _, r := range rows {
		assert.Equal(t, r.leads, setup.Leads(r.fence, r.down), "%s down, %s to the fence", r.down, r.fence)
	}
	for _, down := range joinery.Sides {
		for _, fence := range joinery.Sides {
			leads := setup.Leads(fence, down)
			if down.Dimension() == fence.Dimension() {
				assert.Equal(t, joinery.NoSide, leads)
				continue
			}
			assert.Equal(t, 1, determinant(vector(fence), vector(down), vector(leads)), "%s down, %s to the fence", down, fence)
		}
	}
}

// vector writes a side as a unit vector.
func vector(s joinery.Side) (v [3]int) {
	v[s.Dimension()] = -1
	if s.High() {
		v[s.Dimension()] = 1
	}
	return v
}

func determinant(a, b, c [3]int) int {
	return a[0]*(b[1]*c[2]-b[2]*c[1]) - a[1]*(b[0]*c[2]-b[2]*c[0]) + a[2]*(b[0]*c[1]-b[1]*c[0])
}
