package deckfile_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/deckfile"
	"fencecard/setup"
	"fencecard/setup/proof"
	"fencecard/setup/remark"
)

// readBack writes a deck as JSON, changes it, and reads it as a deck again.
func readBack(t *testing.T, plan *joinery.Plan, change func(string) string) []proof.Difference {
	t.Helper()
	d, err := setup.Make(plan)
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, deckfile.Write(&b, d))
	data := []byte(change(b.String()))
	claims, err := deckfile.Read("deck.json", data, plan.Shop.Scale)
	require.NoError(t, err)
	report := proof.Check(plan, claims)
	require.NoError(t, report.Err())
	back := proof.Deck(plan, claims)
	remark.Add(back)
	return deckfile.Differences(back, claims)
}

func TestDifferences(t *testing.T) {
	bench, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	data, err := os.ReadFile("../../testdata/wall-cabinet.yaml")
	require.NoError(t, err)
	cabinet, err := planfile.Read("wall-cabinet.yaml", data, nil)
	require.NoError(t, err)
	same := func(deck string) string { return deck }
	for _, plan := range []*joinery.Plan{bench, cabinet} {
		assert.Empty(t, readBack(t, plan, same), plan.Title)
	}
	replace := func(old, with string) func(string) string {
		return func(deck string) string {
			require.Contains(t, deck, old)
			return strings.Replace(deck, old, with, 1)
		}
	}
	inRuns := func(change func(string) string) func(string) string {
		return func(deck string) string {
			before, runs, ok := strings.Cut(deck, `"runs": [`)
			require.True(t, ok)
			return before + `"runs": [` + change(runs)
		}
	}
	found := readBack(t, bench, replace(`"guide": "lead"`, `"guide": "tail"`))
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Text, "pair 1 of the deck says \"tail\" for its start, guide")
	for _, change := range []struct{ old, with, says string }{
		{`"up": "left"`, `"up": "right"`, "the run says right for its side that is up"},
		{`"toward_you": "back"`, `"toward_you": "front"`, "the run says front for its side toward you"},
		{`"near": "back"`, `"near": "front"`, "the run says front for its side toward you"},
		{`"marks": "A"`, `"marks": "B"`, "the run says B for its pair of marks"},
		{`"card": 1,`, `"card": 2,`, "the run says 2 for its piece card"},
	} {
		found := readBack(t, bench, inRuns(replace(change.old, change.with)))
		require.Len(t, found, 1, change.old)
		assert.Contains(t, found[0].Text, change.says)
	}
	found = readBack(t, bench, replace(`"code": "`, `"code": "x`))
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Text, "by what it says its code is ")
	found = readBack(t, bench, inRuns(replace(`"guide": "lead"`, `"guide": "tail"`)))
	require.Len(t, found, 1)
	assert.Contains(t, found[0].Text, "the run says tail for its ")
	assert.Contains(t, found[0].Text, "guide; as the deck stands it should say lead")
	found = readBack(t, bench, func(deck string) string {
		at := strings.Index(deck, `"cautions": [`) + len(`"cautions": [`)
		return deck[:at] + "99, " + deck[at:]
	})
	require.Len(t, found, 1)
	assert.Equal(t, "cautions", found[0].Field)
	assert.Empty(t, readBack(t, bench, replace(`"guide": "lead",`, ``)), "what is not said is not wrong")
}
