package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// stopped is a groove stopped at both ends.
func stopped(t testing.TB, name, from, to, depth string, after ...string) joinery.Cut {
	c := workpiece.Groove(t, name, "1/4", "2", after...)
	c.Span = joinery.Span{From: workpiece.In(t, from), To: workpiece.In(t, to), Side: joinery.Left}
	c.Depth = workpiece.In(t, depth)
	return c
}

func blocksPlan(t testing.TB, cuts ...joinery.Cut) *joinery.Plan {
	bit := workpiece.BitOf(workpiece.In(t, "1/4"))
	bit.Cap = workpiece.In(t, "1/8")
	plan := workpiece.BoardWith(t, []joinery.Bit{bit}, cuts...)
	plan.Shop.Stops = joinery.Blocks
	plan.Shop.Minutes.Stop = joinery.Minute
	return plan
}

// Between blocks, runs whose blocks stand alike go up one ladder, the others
// one after another; a through cut needs no blocks.
func TestBlocks(t *testing.T) {
	d := workpiece.DeckOf(t, blocksPlan(t,
		stopped(t, "a", "2", "6", "1/4"),
		stopped(t, "b", "8", "12", "1/4"),
		workpiece.Groove(t, "through", "1/4", "2"),
		stopped(t, "c", "2", "6", "3/8"),
		workpiece.Groove(t, "through again", "1/4", "2"),
	))
	require.Len(t, d.Setups, 1, "one bit at one fence distance")
	var climbs [][]string
	for _, c := range d.Setups[0].Climbs() {
		var names []string
		for _, run := range c.Runs {
			names = append(names, run.Cut.Name)
		}
		climbs = append(climbs, names)
	}
	assert.ElementsMatch(t, [][]string{{"a", "c"}, {"b"}, {"through", "through again"}}, climbs)
	// a and c climb 1/8 1/4 3/8; b and the through cuts 1/8 1/4.
	assert.Equal(t, 7, d.Changes.Heights)
	assert.Equal(t, 2, d.Changes.Stops)
	assert.Equal(t, workpiece.Inches(t, "1/8", "1/4", "3/8"), d.Setups[0].Heights)
	assert.Equal(t, 2+2+3+2+2, d.Changes.Passes)
	assert.Equal(t, (3+2+2)*joinery.Minute+7*joinery.Minute/2+11*joinery.Minute/5, d.Changes.Time)
}

// Between blocks a cut that waits for one with other blocks comes later in the
// same setup; one with the same blocks climbs once more, the blocks untouched.
// Between marks either is a setup of its own, the bit and the fence untouched.
func TestAfterAtOneFence(t *testing.T) {
	other := []joinery.Cut{stopped(t, "first", "8", "12", "1/4", "then"), stopped(t, "then", "2", "6", "1/4")}
	same := []joinery.Cut{stopped(t, "first", "2", "6", "1/4", "then"), stopped(t, "then", "2", "6", "1/4")}
	for name, c := range map[string]struct {
		cuts          []joinery.Cut
		stops         joinery.Stops
		want          []string
		fences, heads int
	}{
		"blocks, other":  {other, joinery.Blocks, []string{"6.35 mm@2: then first"}, 1, 4},
		"blocks, same":   {same, joinery.Blocks, []string{"6.35 mm@2: then first"}, 1, 4},
		"marks, another": {other, joinery.Marks, []string{"6.35 mm@2: then", "6.35 mm@2: first"}, 1, 4},
	} {
		t.Run(name, func(t *testing.T) {
			plan := blocksPlan(t, c.cuts...)
			plan.Shop.Stops = c.stops
			d := workpiece.DeckOf(t, plan)
			assert.Equal(t, c.want, workpiece.Route(d))
			assert.Equal(t, c.fences, d.Changes.Fences)
			assert.Equal(t, c.heads, d.Changes.Heights)
			assert.Equal(t, 1, d.Changes.Bits)
		})
	}
	d := workpiece.DeckOf(t, blocksPlan(t, same...))
	assert.Equal(t, 1, d.Changes.Stops, "the blocks stay")
	assert.Equal(t, deck.Count(d.Setups, &d.Plan.Shop).Time, d.Changes.Time)
}
