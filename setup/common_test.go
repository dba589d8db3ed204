package setup_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// fencesFor makes a deck of grooves in pieces of their own, by one 1/2 in bit, and
// lists its different fence distances in sixty-fourths of an inch.
func fencesFor(t *testing.T, grooves ...joinery.Cut) []int {
	t.Helper()
	plan := workpiece.BoardWith(t, []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1/2"))}, grooves[0])
	for _, g := range grooves[1:] {
		more := workpiece.BoardWith(t, plan.Shop.Bits, g)
		more.Pieces[0].Name = g.Name
		plan.Pieces = append(plan.Pieces, more.Pieces...)
	}
	d, err := setup.Make(plan)
	require.NoError(t, err)
	require.True(t, d.Changes.Proved)
	var at []int
	for _, s := range d.Setups {
		at = append(at, int(s.Fence.NearEdge/(measure.Inch/64)))
	}
	return at
}

// A groove wider than its bit is cut where the fence stands for other grooves
// anyway: neighbours need only overlap.
func TestFenceDistancesInCommon(t *testing.T) {
	wide := workpiece.Groove(t, "wide", "1 1/4", "1")
	assert.Equal(t, []int{64, 88, 112}, fencesFor(t, wide), "evenly where nothing else is there")
	assert.Equal(t, []int{64, 84, 112}, fencesFor(t, wide, workpiece.Groove(t, "narrow", "1/2", "1 5/16")))
	assert.Equal(t, []int{64, 88, 96, 112}, fencesFor(t, wide, workpiece.Groove(t, "narrow", "1/2", "1 1/2")), "1 1/2 leaves a sliver beside 1")
	assert.Equal(t, []int{64, 80, 96, 112}, fencesFor(t, wide, workpiece.Groove(t, "first", "1/2", "1 1/4"), workpiece.Groove(t, "second", "1/2", "1 1/2")))
}

// Whatever fence distances are offered, the first and the last stay, they climb
// away from the fence, and neighbours overlap by a division.
func TestFenceDistancesOverlap(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	const in = measure.Inch
	offered := 0
	for range 200 {
		plan := workpiece.BoardWith(t, []joinery.Bit{workpiece.BitOf(in / 2), workpiece.BitOf(in / 4)}, workpiece.Groove(t, "first", "1/4", "1"))
		plan.Pieces[0].Cuts = nil
		for range 5 {
			c := workpiece.Groove(t, "groove", "1/4", "1")
			c.Name += string(rune('a' + len(plan.Pieces[0].Cuts)))
			c.Width = measure.Length(16+random.IntN(120)) * in / 64
			c.Start.Distance = measure.Length(32+random.IntN(120)) * in / 64
			plan.Pieces[0].Cuts = append(plan.Pieces[0].Cuts, c)
		}
		lay(&plan.Pieces[0], plan.Shop.Scale)
		jobs, err := setup.Jobs(plan)
		require.NoError(t, err)
		for _, j := range jobs {
			ways := map[measure.Length]int{}
			for _, w := range j.Ways {
				ways[w.Bit.True()]++
				d := w.Bit.True()
				if d >= j.Channel.Width {
					continue
				}
				last := len(w.Steps) - 1
				require.Equal(t, len(w.Steps), w.Passes)
				require.Equal(t, j.Channel.Setback, w.Steps[0].NearEdge)
				require.Equal(t, j.Channel.Setback+j.Channel.Width, w.Steps[last].NearEdge+d)
				for i := 1; i <= last; i++ {
					require.Equal(t, i+1, w.Steps[i].Position)
					require.Greater(t, w.Steps[i].NearEdge, w.Steps[i-1].NearEdge)
					require.LessOrEqual(t, w.Steps[i].NearEdge, w.Steps[i-1].NearEdge+d-in/64)
				}
			}
			offered += len(j.Ways) - len(ways)
		}
	}
	assert.Greater(t, offered, 500)
}
