package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/deck"
)

// TestRanges writes lists of run numbers.
func TestRanges(t *testing.T) {
	for want, numbers := range map[string][]int{
		"3.1":                        {1},
		"3.1, 3.2":                   {1, 2},
		"3.1–3.3":                    {1, 2, 3},
		"3.1–3.4, 3.7, 3.9–3.11":     {1, 2, 3, 4, 7, 9, 10, 11},
		"3.2, 3.3, 3.5, 3.98, 3.100": {2, 3, 5, 98, 100},
	} {
		var runs []*deck.Run
		for _, n := range numbers {
			runs = append(runs, &deck.Run{Setup: 3, Index: n})
		}
		assert.Equal(t, want, Ranges(runs))
	}
}
