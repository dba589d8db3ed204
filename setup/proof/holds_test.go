package proof_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/setup"
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
				r.Stop.LeadPastEdge += joinery.Inch / 64
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
