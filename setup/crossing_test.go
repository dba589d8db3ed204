package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// planFrom reads a plan of pieces in inches and oak, its shop's keys given.
func planFrom(t testing.TB, shop, pieces string) *joinery.Plan {
	t.Helper()
	text := "unit: in\nwood: white oak\nshop:\n" + shop + "pieces:\n" + pieces
	plan, err := planfile.Read("plan.yaml", []byte(text), nil)
	require.NoError(t, err)
	return plan
}

const halfInchBit = "  bits:\n    - {bit: half, diameter: 1/2, cutting: 2, shank: 1/2, plunges: yes}\n"

const rail = `  - piece: rail
    size: {left-right: 34, front-back: 7/8, top-bottom: 3}
    cuts:
      - tenon: left
        at: left
        length: 1 1/2
        cheeks: {front: 3/16, back: 3/16}
`

// A tenon 1 1/2 in long with a bit of 1/2 in: one fence distance, at the
// shoulder, and four passes side by side, the end first drawn back 1 in.
func TestCrossingOfATenon(t *testing.T) {
	d := workpiece.DeckOf(t, planFrom(t, halfInchBit, rail))
	require.Len(t, d.Setups, 1)
	s := d.Setups[0]
	assert.Equal(t, workpiece.In(t, "1"), s.Fence.NearEdge)
	assert.Equal(t, workpiece.In(t, "1 1/4"), s.Fence.Centre)
	assert.Equal(t, workpiece.In(t, "1 1/2"), s.Fence.FarEdge)
	require.Len(t, s.Runs, 2)
	front := s.Runs[0]
	assert.Equal(t, joinery.Front, front.Step.Down)
	assert.Equal(t, joinery.Left, front.Step.Fence)
	assert.Equal(t, joinery.Top, front.Leads)
	assert.True(t, front.Guided)
	assert.Equal(t, &deck.Nibble{Passes: 4, DrawBack: workpiece.In(t, "1")}, front.Nibble)
	assert.Equal(t, 2*4*len(front.Heights), d.Changes.Passes)
}

// runsOf makes the deck of one cut in a board and returns its runs.
func runsOf(t *testing.T, shop, size, cut string) []deck.Run {
	t.Helper()
	d := workpiece.DeckOf(t, planFrom(t, shop, "  - piece: board\n    size: "+size+"\n    cuts:\n      - "+cut+"\n"))
	var runs []deck.Run
	for _, s := range d.Setups {
		runs = append(runs, s.Runs...)
	}
	return runs
}

func TestWhatIsACrossing(t *testing.T) {
	const board = "{left-right: 24, front-back: 3/4, top-bottom: 8}"
	for _, test := range []struct {
		name, size, cut string
		runs, passes    int // fence distances, and passes side by side
		fence           joinery.Side
		guided          bool
	}{
		{"lap", board, "{lap: end, in: back, at: left, length: 1 1/2, depth: 3/8}", 1, 4, joinery.Left, true},
		{"end rabbet", board, "{rabbet: end, in: back, along: right, width: 3/4, depth: 3/8}", 1, 2, joinery.Right, true},
		{"dado at the very end", board, "{dado: end, in: back, width: 3/4, setback: 0 from right, depth: 1/4}", 1, 2, joinery.Right, true},
		{"dado that ends at the far end", board, "{dado: end, in: back, width: 3/4, setback: 23 1/4 from left, depth: 1/4}", 1, 2, joinery.Right, true},
		{"one pass over a wide end", board, "{lap: end, in: back, at: left, length: 1/2, depth: 3/8}", 1, 1, joinery.Left, false},
		{"one pass over a narrow end", "{left-right: 24, front-back: 3/4, top-bottom: 5}", "{lap: end, in: back, at: left, length: 1/2, depth: 3/8}", 1, 1, joinery.Left, true},
		{"stopped lap", board, "{dado: end, in: back, width: 1 1/2, setback: 0 from left, span: 0 to 6 from top, depth: 3/8}", 4, 1, joinery.Left, false},
		{"away from the end", board, "{dado: shelf, in: back, width: 3/4, setback: 4 from left, depth: 1/4}", 2, 1, joinery.Left, false},
		{"narrow board away from the end", "{left-right: 24, front-back: 3/4, top-bottom: 5}", "{dado: shelf, in: back, width: 3/4, setback: 4 from left, depth: 1/4}", 2, 1, joinery.Left, true},
		{"along an edge", board, "{rabbet: edge, in: back, along: top, width: 3/4, depth: 3/8}", 2, 1, joinery.Top, false},
		{"the other end wanted at the fence", "{left-right: 9, front-back: 3/4, top-bottom: 5}", "{lap: end, in: back, at: left, length: 3/4, depth: 3/8, fence: right}", 2, 1, joinery.Right, true},
	} {
		t.Run(test.name, func(t *testing.T) {
			runs := runsOf(t, halfInchBit, test.size, test.cut)
			require.Len(t, runs, test.runs)
			for _, r := range runs {
				assert.Equal(t, test.passes, r.Sideways())
				assert.Equal(t, test.fence, r.Step.Fence)
				assert.Equal(t, test.guided, r.Guided)
			}
		})
	}
}

// Across an end no bit over 3/4 in is used, 20 mm in a metric shop, unless the cut names it.
func TestNoWideBitAcrossAnEnd(t *testing.T) {
	shop := "  bits:\n    - {bit: half, diameter: 1/2, plunges: yes}\n    - {bit: inch, diameter: 1, plunges: yes}\n"
	const board = "{left-right: 24, front-back: 3/4, top-bottom: 8}"
	assert.Equal(t, "half", runsOf(t, shop, board, "{lap: end, in: back, at: left, length: 1, depth: 3/8}")[0].Step.Bit.Name)
	assert.Equal(t, "inch", runsOf(t, shop, board, "{lap: end, in: back, at: left, length: 1, depth: 3/8, bit: inch}")[0].Step.Bit.Name)
	_, err := setup.Make(planFrom(t, "  bits:\n    - {bit: inch, diameter: 1}\n",
		"  - piece: board\n    size: "+board+"\n    cuts:\n      - {lap: end, in: back, at: left, length: 1, depth: 3/8}\n"))
	assert.ErrorContains(t, err, "write bit: inch")
	metric := *planFrom(t, "  unit: mm\n  scale: 0.1 mm\n  bits:\n    - {bit: a, diameter: 20, plunges: yes}\n    - {bit: b, diameter: 25, plunges: yes}\n", rail)
	assert.Equal(t, "a", workpiece.DeckOf(t, &metric).Setups[0].Bit.Name)
}

// A carriage raises the work: its runs have a setup and a ladder of their own,
// at a fence that is not set again, and the bit stands higher by its base.
func TestCrossingOnACarriage(t *testing.T) {
	const shop = "  lift: 2\n  crossing: {carriage: 1/2}\n  minutes: {bit: 3, fence: 2, height: 0.5, pass: 0.2, fit: 2}\n" + halfInchBit
	d := workpiece.DeckOf(t, planFrom(t, shop, `  - piece: board
    size: {left-right: 24, front-back: 3/4, top-bottom: 8}
    cuts:
      - {lap: end, in: back, at: left, length: 1 1/2, depth: 3/8}
      - {groove: panel, in: front, width: 1/2, setback: 1 from top, depth: 1/2}
`))
	require.Len(t, d.Setups, 2)
	assert.Equal(t, 1, d.Changes.Fences, "both stand 1 in from the bit")
	for _, s := range d.Setups {
		assert.Len(t, s.Runs, 1)
		assert.Equal(t, s.Runs[0].Guided, s.Carriage > 0)
	}
	s := d.Setups[0]
	if s.Carriage == 0 {
		s = d.Setups[1]
	}
	assert.Equal(t, workpiece.In(t, "1/2"), s.Carriage)
	for i, h := range s.BitHeights() {
		assert.Equal(t, s.Heights[i]+s.Carriage, h)
	}
}

func TestWhatACarriageForbids(t *testing.T) {
	const deep = "  - piece: board\n    size: {left-right: 24, front-back: 3, top-bottom: 3}\n    cuts:\n      - {lap: end, in: back, at: left, length: 1 1/2, depth: 1 3/4}\n"
	for _, test := range []struct{ shop, want string }{
		{"  lift: 2\n  crossing: {carriage: 1/2}\n  bits:\n    - {bit: half, diameter: 1/2, cutting: 2, shank: 1/2}\n", "the bit would stand higher than the table lifts it"},
		{"  lift: 3\n  crossing: {carriage: 1/2}\n  bits:\n    - {bit: half, diameter: 3/8, cutting: 2, shank: 1/2}\n", "its shank is thicker than the bit and would turn in the base"},
	} {
		_, err := setup.Make(planFrom(t, test.shop, deep))
		assert.ErrorContains(t, err, test.want)
	}
	workpiece.DeckOf(t, planFrom(t, "  lift: 3\n  crossing: {carriage: 1/2}\n  bits:\n    - {bit: half, diameter: 1/2, cutting: 2, shank: 1/2}\n", deep))
}

// Every shoulder of the plans has one fence distance, at the shoulder, and no
// wide bit.
func TestEveryShoulderHasOneFenceDistance(t *testing.T) {
	shoulders := 0
	for name, plan := range workpiece.RealPlans(t) {
		d, err := setup.MakeWith(t.Context(), plan, bySteps)
		require.NoError(t, err)
		for _, s := range d.Setups {
			for _, r := range s.Runs {
				if r.Cut.Kind != &joinery.Tenon && r.Cut.Kind != &joinery.Lap || r.Channel.Near.Dimension() != r.Piece.Grain {
					continue
				}
				shoulders++
				assert.Equal(t, 1, r.Step.Of, "%s %s %s", name, r.Piece.Name, r.Cut.Name)
				assert.Equal(t, r.Cut.Length, s.Fence.FarEdge, "%s %s %s", name, r.Piece.Name, r.Cut.Name)
				assert.LessOrEqual(t, s.Bit.Diameter, 20*measure.Millimetre)
			}
		}
	}
	assert.Greater(t, shoulders, 100)
}
