package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// The worked examples were calculated by hand before there was a program.

func leg(t testing.TB) joinery.Size {
	return joinery.Size{workpiece.In(t, "1 5/8"), workpiece.In(t, "1 5/8"), workpiece.In(t, "17")}
}

func legMortise(t testing.TB, side joinery.Side) joinery.Cut {
	return joinery.Cut{
		Kind: &joinery.Mortise, Name: "seat rail", In: side,
		Width: workpiece.In(t, "3/8"), Depth: workpiece.In(t, "1"),
		Start: joinery.Setback{Distance: workpiece.In(t, "1/2"), From: joinery.Front},
		Span:  joinery.Span{From: workpiece.In(t, "1/2"), To: workpiece.In(t, "3"), Side: joinery.Top},
	}
}

// marks writes a mark's five numbers in inches, in the order of the fields.
func marks(t testing.TB, texts ...string) *deck.Mark {
	n := make([]measure.Length, 5)
	for i, text := range texts {
		n[i] = workpiece.In(t, text)
	}
	return &deck.Mark{Line: n[0], LeadPastEdge: n[1], LeadPastCentre: n[2], TailBeforeEdge: n[3], TailBeforeCentre: n[4]}
}

func TestWorkedExampleLegMortise(t *testing.T) {
	d := workpiece.DeckOf(t, workpiece.PlanOf(t, measure.Inches, leg(t), legMortise(t, joinery.Right), workpiece.BitOf(workpiece.In(t, "3/8"))))
	require.Len(t, d.Setups, 1)
	require.Len(t, d.Setups[0].Runs, 1)
	r := d.Setups[0].Runs[0]
	assert.Equal(t, joinery.Right, r.Step.Down)
	assert.Equal(t, joinery.Front, r.Step.Fence)
	assert.Equal(t, joinery.Top, r.Leads)
	assert.Equal(t, workpiece.In(t, "1/2"), r.A)
	assert.Equal(t, workpiece.In(t, "3"), r.B)
	assert.Equal(t, deck.Fence{NearEdge: workpiece.In(t, "1/2"), Centre: workpiece.In(t, "11/16"), FarEdge: workpiece.In(t, "7/8")}, d.Setups[0].Fence)
	assert.Equal(t, deck.Drop, r.Begin)
	assert.Equal(t, deck.Lift, r.End)
	assert.Equal(t, marks(t, "1/2", "1/2", "11/16", "16 1/2", "16 5/16"), r.Start)
	assert.Equal(t, marks(t, "3", "3", "2 13/16", "14", "14 3/16"), r.Stop)
	assert.Equal(t, workpiece.In(t, "2 1/8"), r.Travel())
}

func TestWorkedExampleMirroredLeg(t *testing.T) {
	plan := workpiece.PlanOf(t, measure.Inches, leg(t), legMortise(t, joinery.Right), workpiece.BitOf(workpiece.In(t, "3/8")))
	plan.Pieces = append(plan.Pieces, plan.Pieces[0].Mirrored("mirror", joinery.LeftRight, plan.Shop.Scale))
	d := workpiece.DeckOf(t, plan)
	require.Len(t, d.Setups, 1, "mirrored legs share their setup")
	require.Len(t, d.Setups[0].Runs, 2)
	r := d.Setups[0].Runs[1]
	assert.Equal(t, joinery.Left, r.Step.Down)
	assert.Equal(t, joinery.Front, r.Step.Fence)
	assert.Equal(t, joinery.Bottom, r.Leads)
	assert.Equal(t, workpiece.In(t, "14"), r.A)
	assert.Equal(t, workpiece.In(t, "16 1/2"), r.B)
	assert.Equal(t, marks(t, "14", "14", "14 3/16", "3", "2 13/16"), r.Start)
	assert.Equal(t, marks(t, "16 1/2", "16 1/2", "16 5/16", "1/2", "11/16"), r.Stop)
}

func TestWorkedExampleStoppedDado(t *testing.T) {
	dado := joinery.Cut{
		Kind: &joinery.Dado, Name: "shelf", In: joinery.Right,
		Width: workpiece.In(t, "3/4"), Depth: workpiece.In(t, "1/4"),
		Start: joinery.Setback{Distance: workpiece.In(t, "4"), From: joinery.Bottom},
		Span:  joinery.Span{From: 0, To: workpiece.In(t, "1 1/4"), Side: joinery.Back},
	}
	d := workpiece.DeckOf(t, workpiece.PlanOf(t, measure.Inches, leg(t), dado, workpiece.BitOf(workpiece.In(t, "3/4"))))
	r := d.Setups[0].Runs[0]
	assert.Equal(t, joinery.Right, r.Step.Down)
	assert.Equal(t, joinery.Bottom, r.Step.Fence)
	assert.Equal(t, joinery.Front, r.Leads)
	assert.Equal(t, workpiece.In(t, "1 5/8"), r.Length)
	assert.Equal(t, workpiece.In(t, "3/8"), r.A)
	assert.Equal(t, workpiece.In(t, "1 5/8"), r.B)
	require.NotNil(t, r.Start)
	assert.Equal(t, workpiece.In(t, "3/8"), r.Start.LeadPastEdge)
	assert.Equal(t, workpiece.In(t, "3/4"), r.Start.LeadPastCentre)
	assert.Equal(t, deck.RunOut, r.End)
	assert.Nil(t, r.Stop)
}

func TestWorkedExampleMetricRail(t *testing.T) {
	size := joinery.Size{workpiece.MM(t, "640"), workpiece.MM(t, "20"), workpiece.MM(t, "90")}
	groove := joinery.Cut{
		Kind: &joinery.Groove, Name: "panel", In: joinery.Back,
		Width: workpiece.MM(t, "8"), Depth: workpiece.MM(t, "9"),
		Start: joinery.Setback{Distance: workpiece.MM(t, "10"), From: joinery.Bottom},
		Span:  joinery.Span{From: workpiece.MM(t, "30"), To: workpiece.MM(t, "590"), Side: joinery.Left},
	}
	d := workpiece.DeckOf(t, workpiece.PlanOf(t, measure.Millimetres, size, groove, workpiece.BitOf(workpiece.MM(t, "6"))))
	require.Len(t, d.Setups, 2)
	assert.Equal(t, deck.Fence{NearEdge: workpiece.MM(t, "10"), Centre: workpiece.MM(t, "13"), FarEdge: workpiece.MM(t, "16")}, d.Setups[0].Fence)
	assert.Equal(t, deck.Fence{NearEdge: workpiece.MM(t, "12"), Centre: workpiece.MM(t, "15"), FarEdge: workpiece.MM(t, "18")}, d.Setups[1].Fence)
	for _, s := range d.Setups {
		r := s.Runs[0]
		assert.Equal(t, joinery.Back, r.Step.Down)
		assert.Equal(t, joinery.Bottom, r.Step.Fence)
		assert.Equal(t, joinery.Right, r.Leads)
		assert.Equal(t, workpiece.MM(t, "50"), r.A)
		assert.Equal(t, workpiece.MM(t, "610"), r.B)
		assert.Equal(t, workpiece.MM(t, "50"), r.Start.LeadPastEdge)
		assert.Equal(t, workpiece.MM(t, "53"), r.Start.LeadPastCentre)
		assert.Equal(t, workpiece.MM(t, "610"), r.Stop.LeadPastEdge)
		assert.Equal(t, workpiece.MM(t, "607"), r.Stop.LeadPastCentre)
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
