package main

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A question about a card of a deck that was printed without a search is answered
// for that deck or refused, never answered for the deck that a search makes.
func TestAQuestionMeansThePrintedDeck(t *testing.T) {
	plans, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	others := 0
	for _, plan := range plans {
		printed := codeOf(t, plan, "--search", "0")
		ask := []string{"check", plan, "1.1@" + printed, "--height", "1/64"}
		said, _ := runFor(t, append(ask, "--search", "0")...)
		assert.NotContains(t, said, "not deck", plan)
		assert.Contains(t, said, "depth", plan)
		if now := codeOf(t, plan); now != printed {
			others++
			said, code := runFor(t, ask...)
			assert.Equal(t, exitFault, code)
			assert.Contains(t, said, "not deck "+printed+": the plan makes deck "+now+" now", plan)
			assert.NotContains(t, said, "depth", plan)
		}
	}
	assert.Greater(t, others, len(plans)/2) // else the search does nothing
}

// A deck that was written as JSON is printed as it was when it was made.
func TestADeckPrintedFromItsFile(t *testing.T) {
	plans, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	for _, plan := range plans {
		folder := t.TempDir()
		in := func(name string) string { return filepath.Join(folder, name) }
		said, code := runFor(t, "cards", plan, "--book", in("none"), "--out", in("made.json"), "--out", in("made.txt"))
		require.Equal(t, exitDone, code, said)
		said, code = runFor(t, "cards", plan, "--book", in("none"), "--out", in("read.json"), "--out", in("read.txt"), "--deck", in("made.json"))
		require.Equal(t, exitDone, code, said)
		for _, ending := range []string{".json", ".txt"} {
			made, err := os.ReadFile(in("made" + ending))
			require.NoError(t, err)
			read, err := os.ReadFile(in("read" + ending))
			require.NoError(t, err)
			assert.Equal(t, string(made), string(read), plan)
		}
	}
}

func codeOf(t *testing.T, plan string, flags ...string) string {
	var out, err bytes.Buffer
	code := run(t.Context(), append([]string{"cards", plan, "--format", "json", "--book", filepath.Join(t.TempDir(), "none.txt")}, flags...),
		streams{bytes.NewReader(nil), &out, &err})
	require.Equal(t, exitDone, code, err.String())
	found := regexp.MustCompile(`(?m)^  "code": "(....)",$`).FindSubmatch(out.Bytes())
	require.NotNil(t, found)
	return string(found[1])
}
