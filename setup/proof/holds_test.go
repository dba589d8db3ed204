package proof_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckpart"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/proof"
)

// A mistake in the program must not reach the bench: a deck that does not prove
// is refused, with the difference.
func TestADeckThatDoesNotProveIsRefused(t *testing.T) {
	plan, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	deck, err := setup.Make(plan)
	require.NoError(t, err)
	require.NoError(t, proof.Holds(deck))
	for i := range deck.Setups {
		for j := range deck.Setups[i].Runs {
			if r := &deck.Setups[i].Runs[j]; r.Stop != nil {
				r.Stop.LeadPastEdge += measure.Inch / 64
				err := proof.Holds(deck)
				require.Error(t, err)
				assert.Contains(t, err.Error(), "run "+r.Number()+": set by leading end past the leading edge, the ")
				assert.Contains(t, err.Error(), " would end 1/64 too near the "+r.Leads.Opposite().String())
				return
			}
		}
	}
	t.Fatal("the boot bench has no stopped cut")
}

// Every setup of every plan, printed alone, is proved alone. With its fence moved one
// that makes a whole channel is not.
func TestEverySetupAloneIsProved(t *testing.T) {
	for name, plan := range workpiece.RealPlans(t) {
		d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		for i := range d.Setups {
			alone, err := deckpart.Of(d, deckpart.Only{Setups: []int{i + 1}})
			require.NoError(t, err)
			require.NoError(t, proof.Holds(alone), "%s, setup %d", name, i+1)
			alone.Setups[0].Fence = deck.FenceAt(d.Setups[i].Bit, d.Setups[i].Fence.NearEdge+measure.Inch/64)
			claims := proof.Of(alone)
			report := proof.Check(plan, &claims)
			if slices.ContainsFunc(alone.Setups[0].Runs, func(r deck.Run) bool { return r.Step.Of == 1 }) {
				assert.False(t, report.Proved(), "%s, setup %d", name, i+1)
			}
		}
	}
}
