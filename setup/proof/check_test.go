package proof_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/deckfile"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/proof"
)

// bothExamples are the plans that come with the project.
func bothExamples(t testing.TB) map[string]*joinery.Plan {
	t.Helper()
	bench, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	data, err := os.ReadFile(filepath.Join("..", "..", "testdata", "wall-cabinet.yaml"))
	require.NoError(t, err)
	cabinet, err := planfile.Read("wall-cabinet.yaml", data, nil)
	require.NoError(t, err)
	return map[string]*joinery.Plan{"boot bench": bench, "wall cabinet": cabinet}
}

func deckOf(t testing.TB, plan *joinery.Plan) *deck.Deck {
	t.Helper()
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}

// written is a deck that went through its JSON and back.
func written(t testing.TB, d *deck.Deck) *proof.Claims {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, deckfile.Write(&b, d))
	c, err := deckfile.Read("deck.json", b.Bytes(), d.Plan.Shop.Scale)
	require.NoError(t, err)
	return c
}

func TestExamplesProve(t *testing.T) {
	for name, plan := range bothExamples(t) {
		d := deckOf(t, plan)
		for how, claims := range map[string]*proof.Claims{"as made": claimsOf(d), "as written": written(t, d)} {
			r := proof.Check(plan, claims)
			assert.Empty(t, r.Faults, "%s %s", name, how)
			assert.Len(t, r.Results, d.Runs())
			assert.True(t, r.Proved())
		}
	}
}

func claimsOf(d *deck.Deck) *proof.Claims {
	c := proof.Of(d)
	return &c
}
