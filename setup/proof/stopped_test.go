package proof_test

import (
	"math"
	"testing"

	"github.com/peterstace/simplefeatures/geom"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// stopped has edges that begin, end or do both short of an end: a chamfer, one with
// the fence forward of its pilot, a round-over in two heights and a bead whose passes
// are by the fence.
const stopped = `title: Stopped edges
unit: in
wood: white oak
shop:
  bits:
    - {bit: half round-over, kind: round-over, radius: 1/2, pilot: 1/2, diameter: 1 1/2, cutting: 5/8, shank: 1/2}
    - {bit: small chamfer, kind: chamfer, radius: 1/4, pilot: 1/2, diameter: 1, cutting: 1/2, shank: 1/4}
    - {bit: bead, kind: outline, outline: [[0, 0], [1/8, 1/4], [3/8, 1/8]], pilot: 1/2, diameter: 1, cutting: 1/2, shank: 1/2}
pieces:
  - piece: leg
    size: {left-right: 2, front-back: 2, top-bottom: 28}
    cuts:
      - {profile: both, on: front left, bit: small chamfer, span: 6 to 21 from top}
      - {profile: end, on: front right, bit: small chamfer, reach: 3/16, span: 7 to 28 from top}
      - {profile: begin, on: back left, bit: half round-over, span: 0 to 20 from top}
      - {profile: bead, on: back right, bit: bead, span: 8 to 20 from top}
`

func stoppedEdges(t testing.TB) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read("stopped.yaml", []byte(stopped), nil)
	require.NoError(t, err)
	return plan
}

// A chamfer of 1/4 in on a pilot of 1/2 turns in a circle of 1/2 in about an axis 1/4
// behind the fence: it comes out over 2 sqrt(1/4 - 1/16) = 0.8660 in. With the fence
// 1/16 forward over 2 sqrt(1/4 - 25/256) = 0.7806.
func TestMarksOfStoppedEdgesTakeTheChord(t *testing.T) {
	d, err := setup.Make(stoppedEdges(t))
	require.NoError(t, err)
	chords := map[string]float64{"both": 0.8660, "end": 0.7806, "begin": 2 * math.Sqrt(9.0/16-1.0/16)}
	seen := 0
	for i := range d.Setups {
		for k := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[k]
			want, ok := chords[r.Cut.Name]
			if !ok {
				continue
			}
			seen++
			if r.Start != nil {
				assert.InDelta(t, want/2, (r.Start.LeadPastCentre - r.Start.Line).Inches(), 5e-5, r.Cut.Name)
				assert.InDelta(t, want/2, (r.Start.TailBeforeEdge - r.Start.TailBeforeCentre).Inches(), 5e-5, r.Cut.Name)
			}
			if r.Stop != nil {
				assert.InDelta(t, want/2, (r.Stop.Line - r.Stop.LeadPastCentre).Inches(), 5e-5, r.Cut.Name)
			}
			if r.Start != nil && r.Stop != nil {
				assert.InDelta(t, 15-want, r.Travel().Inches(), 5e-5)
			}
		}
	}
	assert.Equal(t, 3, seen)
}

// What a stopped edge takes, layer by layer: the circle of the bit at that height,
// moved from axis to axis, as a polygon that a geometry library cuts at the fence.
func TestVolumesOfStoppedEdges(t *testing.T) {
	for at, name := range []string{"both", "end", "begin", "bead"} {
		plan := stoppedEdges(t)
		plan.Pieces[0].Cuts = plan.Pieces[0].Cuts[at : at+1]
		d, err := setup.Make(plan)
		require.NoError(t, err)
		claims := proof.Of(d)
		last := &d.Setups[len(d.Setups)-1].Runs[0]
		got := proof.Volumes(plan, &claims)
		require.Len(t, got, 1)
		assert.InEpsilon(t, layered(t, last, d.Setups[len(d.Setups)-1].Fence.Centre.Millimetres()), got[0].MM3, 5e-4, name)
	}
}

// layered sums the layers of one run by the geometry library.
func layered(t *testing.T, r *deck.Run, centre float64) float64 {
	t.Helper()
	const layers = 200
	ch, pilot := r.Channel, r.Step.Bit.Pilot.Millimetres()/2
	from, to := -100.0, r.Length.Millimetres()+100 // where the bit's axis is over the work, from the leading end
	if r.Start != nil {
		from = r.Start.LeadPastCentre.Millimetres()
	}
	if r.Stop != nil {
		to = r.Stop.LeadPastCentre.Millimetres()
	}
	work := rectangle(0, 0, r.Length.Millimetres(), 50)
	high := ch.Depth.Millimetres()
	sum := 0.0
	for i := range layers {
		z := high * (float64(i) + 0.5) / layers
		radius := pilot + r.Step.Bit.Outline.ReachAt(high-z)
		round := append(disc(from, centre, radius, 256), disc(to, centre, radius, 256)...)
		gone, err := geom.Intersection(work, geom.NewMultiPoint(round).ConvexHull())
		require.NoError(t, err)
		sum += gone.Area() * high / layers
	}
	return sum
}
