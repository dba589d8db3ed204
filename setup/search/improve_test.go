package search_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup/internal/brute"
	"fencecard/setup/search"
)

// Taking out and putting back alone finds the least of nearly every small problem,
// from the first ways on, and whatever it finds is sound and costs what it says.
func TestImprovingAlone(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		cases
		least int // how many of the problems come to the least; no piece is turned that was not
	}{
		"marks":  {cases{cutting: true, problems: 60}, 56},
		"blocks": {cases{cutting: true, blocks: true, problems: 60}, 40},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			least := 0
			for seed := range c.problems {
				p := batch(rand.New(rand.NewPCG(seed, 11)), c.cases)
				a := search.Improved(p)
				require.Equal(t, a.Cost, brute.Cost(p, a.Choice, a.Ascents), "seed %d", seed)
				checkOrder(t, p, a)
				best := brute.Least(p)
				require.GreaterOrEqual(t, a.Cost, best, "seed %d", seed)
				if a.Cost == best {
					least++
				}
			}
			assert.GreaterOrEqual(t, least, c.least)
		})
	}
}
