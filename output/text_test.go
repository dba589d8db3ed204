package output_test

import (
	"bytes"
	"os"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/screen"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// exampleDeck makes the deck of the boot bench or the wall cabinet.
func exampleDeck(t testing.TB, name string) *deck.Deck {
	t.Helper()
	data := examples.BootBench
	if name == "wall cabinet" {
		var err error
		data, err = os.ReadFile("../testdata/wall-cabinet.yaml")
		require.NoError(t, err)
	}
	plan, err := planfile.Read(name+".yaml", data, nil)
	require.NoError(t, err)
	deck, err := setup.Make(plan)
	require.NoError(t, err)
	return deck
}

func TestTextFits80Columns(t *testing.T) {
	for _, name := range []string{"boot bench", "wall cabinet"} {
		var b bytes.Buffer
		require.NoError(t, screen.Text(&b, exampleDeck(t, name)))
		for line := range strings.Lines(b.String()) {
			assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimSuffix(line, "\n")), 80, line)
		}
	}
}

// A tenon has four cheeks, often all at one setup: what it joins is told at the first of
// them, as often as the setup has cuts that join, and not over again.
func TestTextTellsAJointOnceAtASetup(t *testing.T) {
	d := exampleDeck(t, "boot bench")
	var b bytes.Buffer
	require.NoError(t, screen.Text(&b, d))
	parts := strings.Split(b.String(), "\nSETUP ")[1:]
	require.Len(t, parts, len(d.Setups))
	fewer := 0
	for i, u := range d.Setups {
		joining, runs := map[*joinery.Cut]bool{}, 0
		for k := range u.Runs {
			if r := &u.Runs[k]; r.Joint != nil && r.Step.Position <= 1 {
				joining[r.Cut] = true
				runs++
			}
		}
		assert.Equal(t, len(joining), strings.Count(parts[i], "joint     Joins "), "setup %d", u.Number)
		fewer += runs - len(joining)
	}
	assert.Greater(t, fewer, 20)
}
