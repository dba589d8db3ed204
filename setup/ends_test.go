package setup_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// Ends before long edges (common practice, no source): the rabbet takes away the
// splinters where the dado runs out through its edge.
func TestEndsBeforeLongEdges(t *testing.T) {
	first := func(rabbet, dado string) (string, []deck.Warning) {
		plan := workpiece.PieceFrom(t, "30 8 3/4", rabbet, dado)
		d := workpiece.DeckOf(t, plan)
		return d.Setups[0].Runs[0].Cut.Name, d.Warnings
	}
	splintered := func(all []deck.Warning) bool {
		return slices.ContainsFunc(all, func(w deck.Warning) bool { return w.Code == "splintered-exit" })
	}
	// Left to the fence and top down, the back leads and the front trails.
	cut, warnings := first("rabbet edge top front 1/2 3/8", "dado shelf top 1/2 6:left - 1/4")
	assert.Equal(t, "shelf", cut, "the minutes are the same, so the end comes first")
	assert.False(t, splintered(warnings))
	cut, warnings = first("rabbet edge top front 1/2 3/8", "dado shelf top 1/2 6:left - 1/4 after edge")
	assert.Equal(t, "edge", cut, "the maker's own order")
	assert.False(t, splintered(warnings), "is not doubted")
	_, warnings = first("rabbet edge top back 1/2 3/8", "dado shelf top 1/2 6:left - 1/4 after edge")
	assert.False(t, splintered(warnings), "the other edge is where it is fed in")

	// At one bit and fence distance the end is run first at every height.
	plan := workpiece.PieceFrom(t, "30 8 3/4", "groove panel top 1/2 2:front - 1/4", "dado shelf top 1/2 2:left - 1/4")
	d, err := setup.Make(plan)
	require.NoError(t, err)
	require.Len(t, d.Setups, 1)
	assert.Equal(t, "shelf", d.Setups[0].Runs[0].Cut.Name)
	assert.True(t, d.Changes.Proved)
}

// A rail is grooved while its ends still bear, unless the plan wants it otherwise:
// then the groove says how much of an end is gone, and no more than a stub is nothing.
func TestGroovesBeforeTenons(t *testing.T) {
	for _, c := range []struct {
		long, after string
		first, says string
	}{
		{"7/8", "", "panel", ""},
		{"7/8", " after end", "end", "An end is cut away over 7/8"},
		{"3/4", " after end", "end", "An end is cut away over 3/4"},
		{"47/64", " after end", "end", ""},
	} {
		plan := workpiece.PieceFrom(t, "20 3/4 3", "tenon end left "+c.long+" front:1/4 back:1/4", "groove panel bottom 1/4 1/4:front - 3/8"+c.after)
		d := workpiece.DeckOf(t, plan)
		assert.Equal(t, c.first, d.Setups[0].Runs[0].Cut.Name, c)
		says := ""
		for _, s := range d.Setups {
			for _, r := range s.Runs {
				for _, caution := range r.Cautions {
					if caution.Code == "end-gone" {
						assert.Equal(t, "panel", r.Cut.Name)
						says += caution.Brief
					}
				}
			}
		}
		if c.says == "" {
			assert.Empty(t, says, c)
		}
		assert.Contains(t, says, c.says, c)
	}
}
