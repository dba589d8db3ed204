package setup_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
)

// A cut that lies inside one which must come before it begins at its floor; where
// the order is open, or some of it lies in whole wood, at the table.
func TestFromTheFloorOfAnEarlierCut(t *testing.T) {
	const piece, groove = "24 1_1/2 3", "groove panel bottom 1/4 5/8:front - 3/8"
	for name, c := range map[string]struct {
		before, then string
		from         string // "0" for the table
	}{
		"in a groove":                  {groove, "mortise m bottom 1/4 5/8:front 2-4:left 1 after panel", "3/8"},
		"measured from the other side": {groove, "mortise m bottom 1/4 5/8:back 2-4:left 1 after panel", "3/8"},
		"narrower":                     {groove, "mortise m bottom 1/8 11/16:front 2-4:left 1 after panel", "3/8"},
		"in any order":                 {groove, "mortise m bottom 1/4 5/8:front 2-4:left 1", "0"},
		"the groove last":              {groove + " after m", "mortise m bottom 1/4 5/8:front 2-4:left 1", "0"},
		"half beside it":               {groove, "mortise m bottom 1/4 1/2:front 2-4:left 1 after panel", "0"},
		"wider":                        {groove, "mortise m bottom 3/8 9/16:front 2-4:left 1 after panel", "0"},
		"from the other side":          {groove, "mortise m top 1/4 5/8:front 2-4:left 1 after panel", "0"},
		"as deep":                      {groove, "mortise m bottom 1/4 5/8:front 2-4:left 3/8 after panel", "0"},
		"beyond a stopped groove":      {"groove panel bottom 1/4 5/8:front 0-3:left 3/8", "mortise m bottom 1/4 5/8:front 2-4:left 1 after panel", "0"},
		"in the round of its end":      {"groove panel bottom 1/4 5/8:front 0-4:left 3/8", "mortise m bottom 1/4 5/8:front 2-4:left 1 after panel", "0"},
		"clear of the round":           {"groove panel bottom 1/4 5/8:front 0-4_1/8:left 3/8", "mortise m bottom 1/4 5/8:front 2-4:left 1 after panel", "3/8"},
		"in a rabbet":                  {"rabbet panel bottom front 3/4 3/8", "mortise m bottom 1/4 1/4:front 2-4:left 1 after panel", "3/8"},
		"across it":                    {"dado panel bottom 3/4 4:left - 3/8", "mortise m bottom 1/4 5/8:front 4-4_3/4:left 1 after panel", "3/8"},
		"in a whole side planed off":   {"rabbet panel bottom front 1_1/2 3/8", "mortise m bottom 1/4 1/4:front 2-4:left 1 after panel", "0"},
	} {
		t.Run(name, func(t *testing.T) {
			plan := workpiece.PieceFrom(t, piece, c.before, c.then)
			jobs, err := setup.Jobs(plan)
			require.NoError(t, err)
			at := slices.IndexFunc(jobs, func(j setup.Job) bool { return j.Cut.Name == "m" })
			assert.Equal(t, workpiece.In(t, c.from), jobs[at].Channel.Recess.Depth)
			var first measure.Length
			for _, s := range workpiece.DeckOf(t, plan).Setups { // which proves
				for _, r := range s.Runs {
					if r.Cut.Name == "m" {
						first = r.Heights[0]
					}
				}
			}
			assert.Equal(t, jobs[at].Channel.Recess.Depth > 0, first > 3*measure.Inch/8, "the first of its heights is %s", measure.InchScale.Say(first))
		})
	}
}
