package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// misfit makes a plan that no bit can cut and returns what is said of it.
func misfit(t *testing.T, plan *joinery.Plan) string {
	t.Helper()
	for i := range plan.Pieces {
		require.Empty(t, plan.Pieces[i].LayAll(plan.Shop.Scale))
	}
	_, err := setup.Make(plan)
	require.Error(t, err)
	return err.Error()
}

func TestWhatBitWould(t *testing.T) {
	stopped := func(p *joinery.Plan) {
		p.Pieces[0].Cuts[0].Span = joinery.Span{From: workpiece.In(t, "1"), To: workpiece.In(t, "20"), Side: joinery.Left}
	}
	rows := []struct {
		name   string
		change func(*joinery.Plan)
		says   []string
	}{
		{"too wide", func(p *joinery.Plan) { p.Pieces[0].Cuts[0].Width = workpiece.In(t, "7/16") },
			[]string{"no bit is narrow enough for a channel 7/16 in wide", "add a bit of 7/16 in with 1/4 in of cutting length to the shop"}},
		{"too wide, between the usual sizes", func(p *joinery.Plan) { p.Pieces[0].Cuts[0].Width = workpiece.In(t, "15/32"); stopped(p) },
			[]string{"add a bit of 7/16 in with 1/4 in of cutting length that plunges to the shop"}},
		{"narrower than the usual sizes", func(p *joinery.Plan) { p.Pieces[0].Cuts[0].Width = workpiece.In(t, "1/16") },
			[]string{"add a bit of 1/16 in or less with"}},
		{"too short", func(p *joinery.Plan) {
			p.Shop.Bits[0].Cutting = workpiece.In(t, "1/2")
			p.Shop.Bits = append(p.Shop.Bits, workpiece.BitOf(workpiece.In(t, "3/8")))
			p.Shop.Bits[1].Name, p.Shop.Bits[1].Cutting = "longer", workpiece.In(t, "3/4")
			p.Pieces[0].Cuts[0].Depth = workpiece.In(t, "1")
		}, []string{"the longer bit cuts only 3/4 in", "add a bit of 1/2 in with 1 in of cutting length to the shop"}},
		{"too wide, and too short as well", func(p *joinery.Plan) {
			p.Shop.Bits[0].Cutting = workpiece.In(t, "1/2")
			p.Pieces[0].Cuts[0].Width, p.Pieces[0].Cuts[0].Depth = workpiece.In(t, "7/16"), workpiece.In(t, "1")
		}, []string{"no bit is narrow enough for a channel 7/16 in wide"}},
		{"measured a hair too wide", func(p *joinery.Plan) { p.Shop.Bits[0].Measured = workpiece.In(t, "0.5002") },
			[]string{"bit is measured 0.5002 in, wider than the channel", "write width: 0.5002 in and fit its mate to it, or add a bit of 1/2 in"}},
		{"a short span", func(p *joinery.Plan) {
			p.Pieces[0].Cuts[0].Span = joinery.Span{From: workpiece.In(t, "1"), To: workpiece.In(t, "1 3/8"), Side: joinery.Left}
		}, []string{"only 3/8 in long", "lengthen the span, or add a bit of 3/8 in with 1/4 in of cutting length that plunges"}},
		{"not plunging", func(p *joinery.Plan) { p.Shop.Bits[0].Plunges = joinery.No; stopped(p) },
			[]string{"does not plunge", "add a bit of 1/2 in with 1/4 in of cutting length that plunges"}},
		{"no bits", func(p *joinery.Plan) { p.Shop.Bits = nil }, []string{"the shop has no bits"}},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			plan := workpiece.PlainPlan(t)
			r.change(plan)
			said := misfit(t, plan)
			for _, want := range r.says {
				assert.Contains(t, said, want)
			}
		})
	}
	metric := workpiece.PlanOf(t, measure.Millimetres, joinery.Size{workpiece.MM(t, "600"), workpiece.MM(t, "90"), workpiece.MM(t, "20")}, joinery.Cut{
		Kind: &joinery.Groove, Name: "groove", In: joinery.Bottom, Width: workpiece.MM(t, "9"), Depth: workpiece.MM(t, "6"),
		Start: joinery.Setback{Distance: workpiece.MM(t, "20"), From: joinery.Front},
	}, workpiece.BitOf(workpiece.MM(t, "10")))
	assert.Contains(t, misfit(t, metric), "add a bit of 8 mm with 6 mm of cutting length")
}

// A hand-held router whose base is 6 wide, with a bit of 1/2, cuts (6 - 1/2) / 2
// from the straightedge its base runs along (worked out).
func TestBeyondTheFencesReach(t *testing.T) {
	plan := func(setback string) *joinery.Plan {
		p := workpiece.PlainPlan(t)
		p.Shop.Fence.Reach = workpiece.In(t, "8")
		p.Pieces[0].Size[joinery.FrontBack] = workpiece.In(t, "24")
		p.Pieces[0].Cuts[0].Start.Distance = workpiece.In(t, setback)
		return p
	}
	fits := plan("7 3/4")
	workpiece.DeckOf(t, fits)
	require.Empty(t, fits.Pieces[0].LayAll(fits.Shop.Scale))

	assert.Contains(t, misfit(t, plan("7 49/64")), "reach of 8 in", "a division more")
	beyond := plan("10")
	assert.Contains(t, misfit(t, beyond), "write base: in the shop file")
	beyond.Shop.Base = workpiece.In(t, "6")
	said := misfit(t, beyond)
	assert.Contains(t, said, "the fence would stand further from the bit than its reach of 8 in")
	assert.Contains(t, said, "clamp a straightedge 7 1/4 in from the front, which is 2 3/4 in from the near wall")
	beyond.Pieces[0].Cuts[0].Width = workpiece.In(t, "3/4")
	assert.Contains(t, misfit(t, beyond), "then move it 1/4 in away for the far wall")

	near := plan("20")
	near.Shop.Base = workpiece.In(t, "6")
	assert.Contains(t, misfit(t, near), "write fence: back, which is near enough")
	near.Pieces[0].Cuts[0].Fence.Side = joinery.Back
	require.Empty(t, near.Pieces[0].LayAll(near.Shop.Scale))
	workpiece.DeckOf(t, near)

	narrow := plan("2")
	narrow.Shop.Fence.Reach, narrow.Shop.Base = workpiece.In(t, "1"), workpiece.In(t, "6")
	assert.Contains(t, misfit(t, narrow), "clamp a straightedge on scrap 3/4 in outside the front")
}
