package views

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/setup"
)

// The lower stroke of the depth reaches below the table's surface, and not into the
// word that stands in the table.
func TestNoStrokeThroughTheTable(t *testing.T) {
	p, err := planfile.Read("plan.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	d, err := setup.Make(p)
	require.NoError(t, err)
	s := setting.Setter{Scale: p.Shop.Scale, Reach: p.Shop.Fence}
	seen := 0
	for i := range d.Setups {
		for _, w := range []paper.Paper{42, 60, 90} {
			u := &d.Setups[i]
			e := infeedEnd{s: s, u: u, c: &u.Runs[0], section: u.Runs[0].Section(), room: w, plain: true}
			b, ok := e.lay(w, 36)
			if !ok {
				continue
			}
			for _, part := range b.Parts {
				if part.Says == "TABLE" {
					seen++
					assert.GreaterOrEqual(t, part.Box.X, e.depth.W+2+paper.ObliqueReach, "setup %d, %.0f mm wide", u.Number, w)
					assert.LessOrEqual(t, part.Box.Right(), e.at(u.Fence.FarEdge.Millimetres(), 0).X, "setup %d, %.0f mm wide: the bit", u.Number, w)
				}
			}
		}
	}
	assert.Greater(t, seen, 20)
}
