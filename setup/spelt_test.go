package setup_test

import (
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// Plans that are written with joints make the decks they made when every cut was
// spelt out, but for the names of cuts. The old spelling is in testdata/spelt.
func TestJointsMakeTheDeckOfTheirCuts(t *testing.T) {
	files, err := filepath.Glob("../testdata/spelt/*.yaml")
	require.NoError(t, err)
	require.GreaterOrEqual(t, len(files), 6)
	for _, file := range files {
		name := filepath.Base(file)
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			spelt, joined := planOfFile(t, file), planOfFile(t, withJoints(t, name))
			before, after := cutCount(spelt), cutCount(joined)
			assert.Equal(t, before, after)
			assert.Equal(t, nameless(t, spelt), nameless(t, joined))
		})
	}
}

// A frame of four legs and four rails takes half the lines, and what follows from
// its joints cannot disagree.
func TestLinesOfAFrame(t *testing.T) {
	lines := func(file string) int {
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		return bytes.Count(data, []byte("\n"))
	}
	assert.Equal(t, 25, lines("../testdata/frame.yaml"))
	assert.Equal(t, 51, lines("../testdata/spelt/frame.yaml"))
}

// withJoints finds the plan that is written with joints now.
func withJoints(t *testing.T, name string) string {
	for _, folder := range []string{"../testdata/plans", "../testdata", "../joinery/examples"} {
		if file := filepath.Join(folder, name); exists(file) {
			return file
		}
	}
	t.Fatalf("there is no %s with joints", name)
	return ""
}

func exists(file string) bool {
	_, err := os.Stat(file)
	return err == nil
}

func planOfFile(t *testing.T, file string) *joinery.Plan {
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	plan, err := planfile.Read(filepath.Base(file), data, nil)
	require.NoError(t, err)
	return plan
}

func cutCount(plan *joinery.Plan) int {
	n := 0
	for i := range plan.Pieces {
		n += len(plan.Pieces[i].Cuts)
	}
	return n
}

// nameless is a deck in words, less the names of its cuts.
func nameless(t *testing.T, plan *joinery.Plan) []string {
	d, err := setup.Make(plan)
	require.NoError(t, err)
	all := []string{fmt.Sprint(d.Changes)}
	for _, s := range d.Setups {
		all = append(all, fmt.Sprint(s.Number, s.Bit.Name, s.Fence, s.Heights))
		for _, r := range s.Runs {
			all = append(all, fmt.Sprint(r.Number(), r.Piece.Name, r.Piece.Size, r.Piece.Count, r.Cut.Kind, r.Cut.Square, r.Cut.Note,
				r.Channel, r.Leads, r.A, r.B, r.Begin, r.End, mark(r.Start), mark(r.Stop), r.Heights))
		}
	}
	return all
}

func mark(m *deck.Mark) string {
	if m == nil {
		return "none"
	}
	return fmt.Sprint(*m)
}
