package setup_test

import (
	"maps"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// dropsBefore are the drops of the real plans by their tilt before any was
// looked at: up to 15 degrees, up to 30, and over that; and those of them with a
// tail under 4 in or 100 mm before the bit.
var dropsBefore = [4]int{319, 49, 13, 69}

// TestDropsByTilt counts the drops of all real plans: none is over 30 degrees,
// and none that is over 15 or has a short tail is pivoted but the few of which
// the plan is warned.
func TestDropsByTilt(t *testing.T) {
	var now [4]int
	hard := 0
	plans := workpiece.RealPlans(t)
	for _, name := range slices.Sorted(maps.Keys(plans)) {
		plan := plans[name]
		d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		for _, s := range d.Setups {
			for _, r := range s.Runs {
				if r.Pivot == nil || !r.Pivots() {
					continue
				}
				u, h := r.Tail().Millimetres(), r.Channel.Depth.Millimetres()
				tilt := math.Atan2(h, u) * 180 / math.Pi
				assert.InDelta(t, tilt, r.Pivot.Tilt, 1e-9, "%s: %s of %s", name, r.Cut.Name, r.Piece.Name)
				switch {
				case tilt > 30:
					now[2]++
				case tilt > 15:
					now[1]++
				default:
					now[0]++
				}
				if r.Tail() < plan.Shop.Rules.HandDistance {
					now[3]++
				}
				if r.HardDrop(plan.Shop.Rules) {
					hard++
					assert.True(t, slices.ContainsFunc(d.Warnings, func(w deck.Warning) bool {
						return w.Code == "steep-drop" && w.Piece == r.Piece.Name && w.Cut == r.Cut.Name
					}), "%s: %s of %s", name, r.Cut.Name, r.Piece.Name)
				}
			}
		}
	}
	t.Logf("drops up to 15 degrees, up to 30, over, with a short tail: %v, before %v", now, dropsBefore)
	assert.Zero(t, now[2])
	assert.Less(t, now[1], dropsBefore[1]/4)
	assert.Less(t, now[3], dropsBefore[3]/4)
}

// A leg 17 long with a mortise 1 deep whose near end is 3 from the end that
// trails: with a bit of 3/8, 20.9 degrees. At 1/2 from it, over 30.
func TestTooSteepADrop(t *testing.T) {
	plan := func(span string) *joinery.Plan {
		p := workpiece.PieceFrom(t, "1_5/8 1_5/8 17", "mortise seat left 3/8 1/2:front "+span+":top 1")
		p.Shop.Rules = joinery.DefaultRules(measure.Inches)
		p.Shop.Bits = []joinery.Bit{workpiece.BitOf(workpiece.In(t, "3/8"))}
		return p
	}
	make := func(p *joinery.Plan) (*deck.Deck, string) {
		d, err := setup.Make(p)
		if err != nil {
			return nil, err.Error()
		}
		return d, ""
	}
	d, _ := make(plan("1/2-3"))
	require.NotNil(t, d)
	assert.InDelta(t, 20.9, d.Setups[0].Runs[0].Pivot.Tilt, 0.05)

	// u = 1 47/64: atan(1/1.734) = 29.97 degrees; a division less, 30.2.
	d, _ = make(plan("1/2-2_7/64"))
	require.NotNil(t, d)
	d, said := make(plan("1/2-2_3/32"))
	require.Nil(t, d)
	for _, way := range []string{"tilted 31 degrees", "write fence: either, so that the back may go to the fence", "longer at the top", "start: hole", "raise: yes", "by: hand"} {
		assert.Contains(t, said, way)
	}
	steep := func(change func(*joinery.Plan)) *deck.Run {
		p := plan("1/2-1")
		change(p)
		require.Empty(t, p.Pieces[0].LayAll(p.Shop.Scale))
		d, said := make(p)
		require.NotNil(t, d, said)
		return &d.Setups[0].Runs[0]
	}
	r := steep(func(p *joinery.Plan) { p.Pieces[0].Cuts[0].Fence.Either = true })
	assert.Equal(t, joinery.Back, r.Step.Fence, "the longer tail is chosen")
	r = steep(func(p *joinery.Plan) { p.Pieces[0].Cuts[0].Bored = true })
	require.NotNil(t, r.Hole)
	assert.Equal(t, workpiece.In(t, "16 3/16"), r.Hole.FromLead, "16 from the leading end, and half the bit")
	r = steep(func(p *joinery.Plan) { p.Shop.Raises = true })
	assert.True(t, r.Raised)

	_, said = make(plan("0-1"))
	assert.True(t, strings.Contains(said, "with 5/8 in of tail"), said)
}
