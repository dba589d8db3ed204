package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/setup/internal/workpiece"
)

// A mortise that may go by either face follows the groove it lies in, unless that
// wants a hard drop or it is not in the middle; then the plan is warned, once.
func TestCutsInTheMiddleGoByOneFace(t *testing.T) {
	for name, c := range map[string]struct {
		groove  joinery.Side
		mortise string
		fence   joinery.Side
		warned  bool
	}{
		"follows":              {joinery.Back, "mortise m bottom 1/4 5/8:front 10-12:left 1", joinery.Back, false},
		"stays":                {joinery.Front, "mortise m bottom 1/4 5/8:front 10-12:left 1", joinery.Front, false},
		"not in the middle":    {joinery.Back, "mortise m bottom 1/4 1/2:front 10-12:left 1", joinery.Front, false},
		"a short tail":         {joinery.Front, "mortise m bottom 1/4 5/8:front 1-3:left 1", joinery.Back, true},
		"a short tail, beside": {joinery.Front, "mortise m top 1/4 5/8:front 1-3:right 1", joinery.Back, false},
	} {
		t.Run(name, func(t *testing.T) {
			plan := workpiece.PieceFrom(t, "24 1_1/2 3", "groove panel bottom 1/4 5/8:front - 3/8", c.mortise)
			cuts := plan.Pieces[0].Cuts
			cuts[0].Fence.Side, cuts[1].Fence.Either = c.groove, true
			d := workpiece.DeckOf(t, plan)
			for _, s := range d.Setups {
				for _, r := range s.Runs {
					if r.Cut.Name == "m" {
						assert.Equal(t, c.fence, r.Step.Fence)
					}
				}
			}
			n := 0
			for _, w := range d.Warnings {
				if w.Code == "other-face" {
					n++
					assert.Equal(t, "m", w.Cut)
				}
			}
			assert.Equal(t, map[bool]int{true: 1}[c.warned], n)
		})
	}
}
