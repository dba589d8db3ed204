package proof_test

import (
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// edged is a board with a round-over in two heights, a chamfer forward of its pilot,
// a bead that takes its passes by the fence, and a raised panel.
const edged = `title: Edges
unit: in
wood: white oak
shop:
  opening: 3
  bits:
    - {bit: half round-over, kind: round-over, radius: 1/2, pilot: 1/2, diameter: 1 1/2, cutting: 5/8, shank: 1/2}
    - {bit: small chamfer, kind: chamfer, radius: 1/4, pilot: 1/2, diameter: 1, cutting: 1/2, shank: 1/4}
    - {bit: half cove, kind: cove, radius: 1/2, pilot: 1/2, diameter: 1 1/2, cutting: 5/8, shank: 1/2}
    - {bit: table panel, kind: outline, outline: [[0, 3/8], [1/4, 1]], pilot: 1/2, diameter: 2 1/2, cutting: 1/2, shank: 1/2}
    - {bit: bead, kind: outline, outline: [[0, 0], [1/8, 1/4], [3/8, 1/8]], pilot: 1/2, diameter: 1, cutting: 1/2, shank: 1/2}
pieces:
  - piece: seat
    size: {left-right: 14, front-back: 12, top-bottom: 1}
    cuts:
      - {profile: front edge, on: top front, bit: half round-over}
      - {profile: left end, on: top left, shape: round-over, radius: 1/2}
      - {profile: low, on: bottom front, bit: small chamfer, reach: 1/8}
      - {profile: bead, on: top back, bit: bead}
      - {profile: cove, on: bottom right, bit: half cove}
  - piece: panel
    size: {left-right: 14, front-back: 3/4, top-bottom: 16}
    grain: top-bottom
    cuts:
      - {panel: raised field, in: front, bit: table panel, leaves: 1/4}
`

// edgedPlan reads it with words replaced in pairs.
func edgedPlan(t testing.TB, instead ...string) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read("edges.yaml", []byte(strings.NewReplacer(instead...).Replace(edged)), nil)
	require.NoError(t, err)
	return plan
}

// The heights and areas of the design's worked examples, in square inches.
func TestPassesOfShapedEdges(t *testing.T) {
	d, err := setup.Make(edgedPlan(t))
	require.NoError(t, err)
	of := map[string]*deck.Run{}
	beads := 0
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			of[r.Cut.Name] = r
			if r.Cut.Name == "bead" {
				beads++
				assert.Len(t, r.Heights, 1)
			}
			for _, area := range r.Areas() {
				assert.LessOrEqual(t, area, r.Cap.Depth.Millimetres()+1e-6, r.Number())
			}
		}
	}
	in := func(area float64) float64 { return area / 25.4 / 25.4 }
	round := of["front edge"]
	require.Equal(t, []measure.Length{13 * measure.Inch / 32, measure.Inch / 2}, round.Heights)
	assert.InDelta(t, 0.0254, in(round.Areas()[0]), 0.00005)
	assert.InDelta(t, 0.0283, in(round.Areas()[1]), 0.00005)
	assert.Equal(t, -measure.Inch/4, d.Setups[round.Setup-1].Fence.Centre, "the pilot flush with the fence")
	low := of["low"]
	assert.Equal(t, -3*measure.Inch/8, d.Setups[low.Setup-1].Fence.Centre, "the fence 1/8 in forward of it")
	assert.InDelta(t, 0.125*0.125/2, in(low.Areas()[0]), 1e-6)
	panel := of["raised field"]
	assert.Len(t, panel.Heights, 5, "five passes in oak")
	whole := 0.0
	for _, area := range panel.Areas() {
		whole += in(area)
	}
	assert.InDelta(t, 0.422, whole, 0.0005, "0.172 + 0.250")
	assert.GreaterOrEqual(t, beads, 2)
	for i := range d.Setups {
		if r := d.Setups[i].Runs; r[0].Cut.Name == "raised field" {
			for k := 1; k < len(r); k++ {
				across := func(r deck.Run) bool { return r.Channel.Run() != r.Piece.Grain }
				assert.False(t, across(r[k]) && !across(r[k-1]), "ends before sides")
			}
		}
	}
}

// The same panel in pine takes three passes.
func TestAPanelInPine(t *testing.T) {
	plan := edgedPlan(t)
	pine, _, ok := timber.FindWood("eastern white pine")
	require.True(t, ok)
	plan.Pieces = plan.Pieces[1:]
	plan.Pieces[0].Wood = pine
	d, err := setup.Make(plan)
	require.NoError(t, err)
	assert.Len(t, d.Setups[0].Heights, 3)
}

// What the runs take of an edge is its area times its length, where no other edge
// meets it.
func TestVolumesOfShapedEdges(t *testing.T) {
	for cut, want := range map[string]float64{
		"front edge": 0.25 * (1 - math.Pi/4) * 14, "left end": 0.25 * (1 - math.Pi/4) * 12, "low": 0.125 * 0.125 / 2 * 14,
		"cove": math.Pi / 16 * 12, "bead": 0.0625 * 14,
	} {
		plan := edgedPlan(t)
		for _, c := range plan.Pieces[0].Cuts {
			if c.Name == cut {
				plan.Pieces[0].Cuts = []joinery.Cut{c}
				break
			}
		}
		plan.Pieces = plan.Pieces[:1]
		d, err := setup.Make(plan)
		require.NoError(t, err)
		claims := proof.Of(d)
		volumes := proof.Volumes(plan, &claims)
		require.Len(t, volumes, 1)
		assert.InEpsilon(t, want*math.Pow(25.4, 3), volumes[0].MM3, 1e-5, cut)
	}
}

// Two shapes on one arris, run the wrong way round: the deck's setups exchanged.
func TestTheSmallerShapeFirstIsFound(t *testing.T) {
	plan := edgedPlan(t, "on: bottom front, bit: small chamfer, reach: 1/8", "on: top front, bit: small chamfer")
	plan.Pieces = plan.Pieces[:1]
	plan.Pieces[0].Cuts = []joinery.Cut{plan.Pieces[0].Cuts[0], plan.Pieces[0].Cuts[2]}
	d, err := setup.Make(plan)
	require.NoError(t, err)
	require.Equal(t, "half round-over", d.Setups[0].Bit.Name)
	d.Setups[0], d.Setups[1] = d.Setups[1], d.Setups[0]
	for i := range d.Setups {
		d.Setups[i].Number = i + 1
		d.Setups[i].Runs[0].Setup = i + 1
	}
	claims := proof.Of(d)
	report := proof.Check(plan, &claims)
	require.False(t, report.Proved())
	assert.ErrorContains(t, report.Err(), "takes more wood of the same arris")
}
