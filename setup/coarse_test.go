package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/ladder"
)

// Whatever a shop's scale shows, no pass is deeper than the bit may take in the
// wood: where the scale cannot show that, the plan is at fault.
func TestNoScaleDeepensAPass(t *testing.T) {
	decks, stopped := 0, 0
	for name, plan := range workpiece.RealPlans(t) {
		for _, division := range []string{"1/32", "1/8", "3/16", "1/4", "3/8", "5 mm", "10 mm"} {
			p := *plan
			p.Shop.Scale.Division = workpiece.In(t, division)
			d, err := setup.MakeWith(t.Context(), &p, setup.Options{Plain: division != "3/16"})
			if err != nil {
				assert.ErrorContains(t, err, "at one pass at the most", "%s at %s", name, division)
				stopped++
				continue
			}
			decks++
			exact := p.Shop
			exact.Scale.Division = 1
			for _, s := range d.Setups {
				for _, r := range s.Runs {
					most, from := ladder.CapFor(r.Step.Bit, r.Piece.Wood, &exact).Depth, r.Channel.Recess.Depth
					for _, h := range r.Heights {
						assert.LessOrEqual(t, h-from, most, "%s at %s: %s of %s", name, division, r.Cut.Name, r.Piece.Name)
						from = h
					}
				}
			}
		}
	}
	assert.Greater(t, decks, 20)
	assert.Greater(t, stopped, 20)
}
