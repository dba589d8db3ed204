package book

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
	"fencecard/joinery/timber"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/proof"
)

// edges is a shelf with a drawn edge whose hollow takes its passes by the fence, and
// one of a radius in two heights; their bites are the shop's own.
const edges = `title: Edges
unit: in
wood: white oak
shop:
  bite: 0.0275
  bits:
    - {bit: bead, kind: outline, outline: [[0, 1/16], [1/8, 1/4], [3/8, 1/8]], pilot: 1/2, diameter: 1, cutting: 1/2, shank: 1/2, speed: 15000}
    - {bit: round, kind: round-over, radius: 1/2, pilot: 1/2, diameter: 1 1/2, cutting: 5/8, shank: 1/2}
pieces:
  - piece: shelf
    size: {left-right: 20, front-back: 8, top-bottom: 1}
    cuts:
      - {profile: front edge, on: top front, bit: bead}
      - {profile: back edge, on: top back, bit: round, reach: 3/8}
`

func edgePlan(t *testing.T, text string) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read("edges.yaml", []byte(text), nil)
	require.NoError(t, err)
	return plan
}

// edgeBook is the book of all setups of a plan.
func edgeBook(t *testing.T, text string) *Book {
	t.Helper()
	d := deckOf(t, edgePlan(t, text))
	b := read(t, "")
	for i := range d.Setups {
		next, err := b.Put(keepAs(t, d, i+1, "setup "+d.Setups[i].Runs[0].Cut.Name+" "+string(rune('a'+i))), false)
		require.NoError(t, err)
		b = next
	}
	return b
}

// A bit of another outline is another setup, whatever it is called and however the
// fence stands: neither equal nor near.
func TestTheOutlineIsPartOfWhatIsCompared(t *testing.T) {
	b := edgeBook(t, edges)
	require.Empty(t, b.Damage())
	require.GreaterOrEqual(t, len(b.Entries()), 3)
	for i, m := range found(t, b, deckOf(t, edgePlan(t, edges))) {
		require.NotNil(t, m.Equal, "setup %d", i+1)
	}
	renamed := strings.NewReplacer("bead", "small bead", "round,", "large round,").Replace(edges)
	for i, m := range found(t, b, deckOf(t, edgePlan(t, renamed))) {
		assert.NotNil(t, m.Equal, "setup %d of other names", i+1)
	}
	for _, other := range []string{"[1/8, 1/4], [1/4, 1/8]", "[1/16, 1/4], [3/8, 1/8]", "[1/8, 1/4], [1/4, 3/16], [3/8, 1/8]"} {
		d := deckOf(t, edgePlan(t, strings.Replace(edges, "[1/8, 1/4], [3/8, 1/8]", other, 1)))
		for i, m := range found(t, b, d) {
			if m.Setup.Bit.Name == "bead" {
				assert.Nil(t, m.Equal, "%s, setup %d", other, i+1)
				assert.Empty(t, m.Offers, "%s, setup %d", other, i+1)
			}
		}
	}
}

// A kept edge is not offered for another fence distance: there it is another edge.
func TestAnEdgeFromElsewhereIsAnotherEdge(t *testing.T) {
	b := edgeBook(t, edges)
	d := deckOf(t, edgePlan(t, strings.Replace(edges, "reach: 3/8", "reach: 11/32", 1)))
	refused := 0
	for _, m := range found(t, b, d) {
		for _, o := range m.Offers {
			require.NotNil(t, o.Use)
			assert.False(t, o.Use.Allowed())
			assert.Contains(t, o.Use.Refused[0], "the pilot of the bit says where the fence stands")
			refused++
		}
	}
	assert.Positive(t, refused)
}

// Each number of a kept outline that is edited by hand gives another code, or a fault
// at its line.
func TestAnOutlineEditedByHand(t *testing.T) {
	b := edgeBook(t, edges)
	text := string(b.Bytes())
	require.Contains(t, text, "  outline: 1/16 in at 0 in, 1/4 in at 1/8 in, 1/8 in at 3/8 in\n")
	require.Contains(t, text, "  cap: 0.0275 sq in, the shop's own bite\n")
	require.Contains(t, text, "  speed: 15000\n")
	for _, edit := range [][2]string{
		{"1/16 in at 0 in", "1/32 in at 0 in"}, {"1/4 in at 1/8 in", "1/4 in at 9/64 in"}, {"1/8 in at 3/8 in", "7/64 in at 3/8 in"},
	} {
		edited := read(t, strings.ReplaceAll(text, edit[0], edit[1]))
		require.Empty(t, edited.Damage(), edit[0])
		assert.True(t, slices.ContainsFunc(edited.Entries(), func(e *Entry) bool { return e.Edited.Known() }), edit[0])
	}
	for edit, want := range map[string]string{
		"1/16 in at 0 in=1/16 in at 1/64 in":         "the outline cannot be read",
		"1/4 in at 1/8 in=1/4 in at 0 in":            "the outline cannot be read",
		"1/4 in at 1/8 in=1/4 in by 1/8 in":          "the outline cannot be read",
		"1/4 in at 1/8 in=3/8 in at 1/8 in":          "diameter, pilot and outline do not fit",
		"pilot: 1/2 in=pilot: 5/8 in":                "diameter, pilot and outline do not fit",
		"pilot: 1/2 in=plot: 1/2 in":                 `has no "pilot"`,
		"radius: 1/2 in=radius: 0 in":                "radius is 0 in",
		"kind: profile=kind: groove":                 "does not make such a cut",
		"fence to near edge: -=fence to near edge: ": "would not shape the edge",
		"kind: round-over=kind: straight":            "does not make such a cut",
	} {
		from, to, _ := strings.Cut(edit, "=")
		require.Contains(t, text, from)
		damaged := read(t, strings.ReplaceAll(text, from, to))
		require.NotEmpty(t, damaged.Damage(), edit)
		assert.ErrorContains(t, damaged.Damage().Err(), want, edit)
	}
}

// A kept setup is printed with what the shop allowed when it was kept, and never
// with a pass that takes more.
func TestAKeptSetupIsHeldToTheCapsItWasKeptWith(t *testing.T) {
	plan := bench(t)
	plan.Shop.Share = timber.Share{Num: 1, Den: 8}
	d := deckOf(t, plan)
	b, err := read(t, "").Put(keepAs(t, d, 1, "gentle"), false)
	require.NoError(t, err)
	require.NoError(t, proof.Holds(b.Entries()[0].Deck()))
	heights := "heights: "
	text := string(b.Bytes())
	first := strings.Index(text, heights) + len(heights)
	comma := first + strings.Index(text[first:], ",") + 1
	skipped := strings.ReplaceAll(text, heights+text[first:comma], heights) // without the lowest
	assert.ErrorContains(t, proof.Holds(read(t, skipped).Entries()[0].Deck()), "more than the bit may")
}

// A kept slot knows that its shank goes on from the head's floor: it is proved from
// there, and a recess that cannot be is told at its line.
func TestAKeptSlotKnowsItsRecess(t *testing.T) {
	plan := workpiece.RealPlans(t)["hall-table"]
	d := deckOf(t, plan)
	at := slices.IndexFunc(d.Setups, func(s deck.Setup) bool { return s.Recessed() })
	require.GreaterOrEqual(t, at, 0)
	b, err := read(t, "").Put(keepAs(t, d, at+1, "shanks"), false)
	require.NoError(t, err)
	kept := b.Entries()[0]
	require.True(t, kept.Setup.Recessed())
	require.NoError(t, proof.Holds(kept.Deck()))
	text := string(b.Bytes())
	line := regexp.MustCompile(`recess: .*`)
	for _, bad := range []string{"yes", "3/8 in deep", "0 in deep, 3/8 in wide, 1/8 in beyond", "3/8 in deep, 1/8 in wide, 1/8 in beyond", "3/4 in deep, 3/8 in wide, 1/8 in beyond"} {
		assert.ErrorContains(t, read(t, line.ReplaceAllString(text, "recess: "+bad)).Damage().Err(), "recess", bad)
	}
	without := read(t, line.ReplaceAllString(text, "note: it is gone"))
	assert.ErrorContains(t, proof.Holds(without.Entries()[0].Deck()), "more than the bit may")
}
