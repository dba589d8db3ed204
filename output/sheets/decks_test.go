package sheets

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/internal/render"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// namedDeck is a deck and what a test calls it.
type namedDeck struct {
	Name string
	deck *deck.Deck
}

// planDeck reads a plan and makes its deck.
func planDeck(t testing.TB, plan []byte) *deck.Deck {
	t.Helper()
	p, err := planfile.Read("plan.yaml", plan, nil)
	require.NoError(t, err)
	d, err := setup.Make(p)
	require.NoError(t, err)
	return d
}

// exampleDecks are the boot bench and the wall cabinet.
func exampleDecks(t testing.TB) []namedDeck {
	t.Helper()
	cabinet, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
	require.NoError(t, err)
	return []namedDeck{{"boot bench", planDeck(t, examples.BootBench)}, {"wall cabinet", planDeck(t, cabinet)}}
}

// realDecks are the examples and every plan of the test data.
func realDecks(t testing.TB) []namedDeck {
	t.Helper()
	decks := exampleDecks(t)
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	for _, file := range files {
		plan, err := os.ReadFile(file)
		require.NoError(t, err)
		decks = append(decks, namedDeck{strings.TrimSuffix(filepath.Base(file), ".yaml"), planDeck(t, plan)})
	}
	return decks
}

// printed makes a document and opens it with the reference renderer.
func printed(t testing.TB, d *deck.Deck, o Pages) *render.Document {
	t.Helper()
	var file bytes.Buffer
	require.NoError(t, PDF(&file, d, o))
	return render.Open(t, file.Bytes())
}
