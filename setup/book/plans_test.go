package book

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup/internal/workpiece"
	"fencecard/setup/proof"
)

// Every setup of every plan is kept, read back as it was, proved alone and found
// again.
func TestEverySetupOfEveryPlanIsKept(t *testing.T) {
	for name, plan := range workpiece.RealPlans(t) {
		d := deckOf(t, plan)
		b := read(t, "")
		for i := range d.Setups {
			what := fmt.Sprintf("%s, setup %d", name, i+1)
			e := keepAs(t, d, i+1, fmt.Sprint(i+1))
			next, err := b.Put(e, false)
			require.NoError(t, err, what)
			b = next
			back, err := b.NamedOrCoded(e.Name)
			require.NoError(t, err, what)
			require.Len(t, back.Setup.Runs, len(d.Setups[i].Runs))
			for k := range back.Setup.Runs {
				is, was := &back.Setup.Runs[k], &d.Setups[i].Runs[k]
				assert.Equal(t, was.Channel, is.Channel, what)
				assert.Equal(t, was.Step.Bit.Speed, is.Step.Bit.Speed, what)
				assert.Equal(t, was.Step.Before, is.Step.Before, what)
				assert.Equal(t, [3]any{was.Screw, was.Hole, was.Raised}, [3]any{is.Screw, is.Hole, is.Raised}, what)
				assert.Equal(t, [3]any{was.Pivot, was.Nibble, was.Guided}, [3]any{is.Pivot, is.Nibble, is.Guided}, what)
				assert.Equal(t, was.Cap.Rule, is.Cap.Rule, what)
				assert.InDeltaSlice(t, was.Areas(), is.Areas(), 1e-9, what)
			}
			if err := proof.Holds(back.Deck()); err != nil {
				t.Errorf("%s: %v", what, err)
			}
		}
		for i, m := range found(t, b, d) {
			assert.NotNil(t, m.Equal, "%s, setup %d", name, i+1)
		}
	}
}
