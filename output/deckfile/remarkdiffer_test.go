package deckfile_test

import (
	"bytes"
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
)

// rewritten changes a deck as somebody with a JSON editor would: its keys come in
// another order, and its numbers may be written in another way.
func rewritten(t *testing.T, change func(deck map[string]any)) func(string) string {
	return func(text string) string {
		var deck map[string]any
		require.NoError(t, json.Unmarshal([]byte(text), &deck))
		change(deck)
		var out bytes.Buffer
		require.NoError(t, json.NewEncoder(&out).Encode(deck))
		return out.String()
	}
}

// Whatever of a deck's joints, cautions and warnings is altered is told.
func TestAlteredRemarksAreTold(t *testing.T) {
	plan, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	require.NoError(t, err)
	list := func(deck map[string]any, key string) []any {
		all, ok := deck[key].([]any)
		require.True(t, ok, key)
		require.NotEmpty(t, all, key)
		return all
	}
	entry := func(deck map[string]any, key string, i int) map[string]any {
		return list(deck, key)[i].(map[string]any)
	}
	assert.Empty(t, readBack(t, plan, rewritten(t, func(map[string]any) {})))
	for _, c := range []struct {
		name   string
		change func(deck map[string]any)
		field  string
		says   string // "": the change is none
	}{
		{"a warning less", func(d map[string]any) { d["warnings"] = list(d, "warnings")[1:] }, "warnings", "as it stands it should have"},
		{"no warning", func(d map[string]any) { d["warnings"] = []any{} }, "warnings", "the deck has no warnings; as it stands it should have"},
		{"a warning more", func(d map[string]any) {
			d["warnings"] = append(list(d, "warnings"), map[string]any{"code": "x", "text": "x"})
		}, "warnings", "as it stands it should have"},
		{"another warning", func(d map[string]any) { entry(d, "warnings", 0)["text"] = "all is well" }, "warnings", `warning 1 of the deck says "all is well" for its text; as the deck stands it should say "`},
		{"another code", func(d map[string]any) { entry(d, "warnings", 0)["code"] = "fine" }, "warnings", `says "fine" for its code`},
		{"a warning that is a number", func(d map[string]any) { list(d, "warnings")[0] = 7 }, "warnings", "says 7 for its whole; as the deck stands it should say something of 4 fields"},
		{"a long warning", func(d map[string]any) { entry(d, "warnings", 0)["more"] = make([]int, 10_000) }, "warnings", "for its length"},
		{"another caution", func(d map[string]any) { entry(d, "cautions", 1)["text"] = "hands may go near" }, "cautions", `caution 2 of the deck says "hands may go near"`},
		{"a lighter caution", func(d map[string]any) { entry(d, "cautions", 0)["weight"] = "note" }, "cautions", `says "note" for its weight`},
		{"a caution less", func(d map[string]any) { d["cautions"] = list(d, "cautions")[1:] }, "cautions", "it should have"},
		{"a joint less", func(d map[string]any) { d["joints"] = list(d, "joints")[1:] }, "joints", "it should have"},
		{"another gap", func(d map[string]any) {
			entry(d, "joints", 0)["fits"].([]any)[0].(map[string]any)["gap"].(map[string]any)["mm"] = 0.5
		}, "joints", "joint 1 of the deck says 0.5 for its fits, gap, mm"},
		{"a fit less", func(d map[string]any) { entry(d, "joints", 0)["fits"] = []any{} }, "joints", "says a list of 0 for its fits"},
		{"another piece", func(d map[string]any) { entry(d, "joints", 0)["into"].(map[string]any)["piece"] = "shelf" }, "joints", `says "shelf" for its into, piece`},
		{"what is not said", func(d map[string]any) { delete(entry(d, "warnings", 0), "code"); delete(d, "cautions") }, "", ""},
		{"what nobody knows", func(d map[string]any) { entry(d, "warnings", 0)["mine"] = "kept" }, "", ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			found := readBack(t, plan, rewritten(t, c.change))
			if c.says == "" {
				assert.Empty(t, found)
				return
			}
			require.Len(t, found, 1)
			assert.Equal(t, c.field, found[0].Field)
			assert.Contains(t, found[0].Text, c.says)
		})
	}
}
