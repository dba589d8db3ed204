package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
)

// stopped is a groove stopped at both ends.
func stopped(t testing.TB, name, from, to, depth string, after ...string) joinery.Cut {
	c := groove(t, name, "1/4", "2", after...)
	c.Span = joinery.Span{From: in(t, from), To: in(t, to), Side: joinery.Left}
	c.Depth = in(t, depth)
	return c
}

func blocksPlan(t testing.TB, cuts ...joinery.Cut) *joinery.Plan {
	bit := bitOf(in(t, "1/4"))
	bit.Cap = in(t, "1/8")
	plan := boardWith(t, []joinery.Bit{bit}, cuts...)
	plan.Shop.Stops = joinery.Blocks
	plan.Shop.Minutes.Stop = joinery.Minute
	return plan
}

// Between blocks, cards whose blocks stand alike go up one ladder, the others
// one after another; a through cut needs no blocks.
func TestBlocks(t *testing.T) {
	d := deckOf(t, blocksPlan(t,
		stopped(t, "a", "2", "6", "1/4"),
		stopped(t, "b", "8", "12", "1/4"),
		groove(t, "through", "1/4", "2"),
		stopped(t, "c", "2", "6", "3/8"),
		groove(t, "through again", "1/4", "2"),
	))
	require.Len(t, d.Setups, 1, "one bit at one fence distance")
	var climbs [][]string
	for _, c := range d.Setups[0].Climbs() {
		var names []string
		for _, card := range c.Cards {
			names = append(names, card.Cut.Name)
		}
		climbs = append(climbs, names)
	}
	assert.ElementsMatch(t, [][]string{{"a", "c"}, {"b"}, {"through", "through again"}}, climbs)
	// a and c climb 1/8 1/4 3/8; b and the through cuts 1/8 1/4.
	assert.Equal(t, 7, d.Changes.Heights)
	assert.Equal(t, 2, d.Changes.Stops)
	assert.Equal(t, inches(t, "1/8", "1/4", "3/8"), d.Setups[0].Heights)
	assert.Equal(t, (3+2+2)*joinery.Minute+7*joinery.Minute/2, d.Changes.Time)
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
			d := deckOf(t, plan)
			assert.Equal(t, c.want, route(d))
			assert.Equal(t, c.fences, d.Changes.Fences)
			assert.Equal(t, c.heads, d.Changes.Heights)
			assert.Equal(t, 1, d.Changes.Bits)
		})
	}
	d := deckOf(t, blocksPlan(t, same...))
	assert.Equal(t, 1, d.Changes.Stops, "the blocks stay")
	assert.Equal(t, setup.Count(d.Setups, &d.Plan.Shop).Time, d.Changes.Time)
}
