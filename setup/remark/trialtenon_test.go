package remark_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/remark"
)

// Drawn 3/8 into 3/8, the trial tenon comes out as drawn and is fitted thinner by the
// play that the shop wants (worked out); drawn with play enough, it is left as it is.
// What it is as set, its cheeks leave of the piece.
func TestTheTrialTenonHasItsPlay(t *testing.T) {
	trial := func(changes map[string]string) []string {
		var all []string
		for _, s := range workpiece.JointDeck(t, changes).Setups {
			for i := range s.Runs {
				r := &s.Runs[i]
				tenon, ok := remark.TrialTenon(r)
				if !ok {
					continue
				}
				assert.Equal(t, "end", r.Cut.Name)
				left := r.Piece.Size[joinery.FrontBack]
				for _, cheek := range r.Cut.Cheeks {
					if cheek.Side.Dimension() == joinery.FrontBack {
						left -= cheek.Depth
					}
				}
				assert.Equal(t, left, tenon.AsSet)
				fine := measure.InchScale.Fine
				all = append(all, fine(tenon.AsSet)+", "+fine(tenon.Fitted)+" in "+fine(tenon.Room))
			}
		}
		return all
	}
	equal := map[string]string{"tenon": "at: left, length: 7/8, cheeks: {front: 1/4, back: 1/4, top: 1/4, bottom: 1/4}", "clearances": "{cheek: 0.005}"}
	assert.Equal(t, []string{"3/8, 0.37 in 3/8"}, slices.Compact(trial(equal)))
	assert.Equal(t, []string{"0.373, 0.373 in 3/8"}, slices.Compact(trial(nil)))
	assert.Empty(t, trial(map[string]string{"mates": ""}))
}
