package sheets

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
)

// allPapers are the papers a deck is printed on.
func allPapers() []PaperSize { return []PaperSize{Letter, A4, Legal, A5, Index} }

// laid lays out a deck.
func laid(t testing.TB, d namedDeck, o Pages) []page {
	t.Helper()
	pages, err := lay(d.deck, o)
	require.NoError(t, err)
	return slices.Collect(pages)
}

// mostPages is how many pages a deck may take on letter and A4 paper: one for
// each setup, with room for 12 runs, one for four pieces, and three.
func mostPages(d namedDeck) int {
	return len(d.deck.Setups) + d.deck.Runs()/12 + len(d.deck.Plan.Pieces)/4 + 3
}

// TestFewPages counts the pages of every plan of the test data; the boot bench
// takes 18 at most, 60 index cards, and 40 on A5.
func TestFewPages(t *testing.T) {
	for _, d := range realDecks(t) {
		for _, p := range []PaperSize{Letter, A4} {
			assert.LessOrEqual(t, len(laid(t, d, Pages{Paper: p})), mostPages(d), "%s on %s", d.Name, p)
		}
	}
	bench := exampleDecks(t)[0]
	for p, most := range map[PaperSize]int{Letter: 18, A4: 18, A5: 40, Index: 60} {
		assert.LessOrEqual(t, len(laid(t, bench, Pages{Paper: p})), most, "boot bench on %s", p)
	}
}

// toRead reports whether a part is something to read.
func toRead(p paper.Part) bool { return p.Name == "text" || p.Name == "number" || p.Name == "boxes" }

// saidIn joins what a block says, line by line.
func saidIn(b paper.Block) string {
	var all []string
	for _, p := range b.Parts {
		if toRead(p) {
			all = append(all, p.Says)
		}
	}
	return strings.Join(all, "|")
}

// checkPages finds parts that leave the page and words that run into others.
func checkPages(t *testing.T, what string, pages []page, margin paper.Paper) {
	t.Helper()
	for i, p := range pages {
		inside := paper.Box{X: 0, Y: 0, W: p.width, H: p.height}.Inset(margin)
		var read []paper.Part
		for _, q := range p.Parts {
			if !inside.Holds(q.Box) {
				require.Failf(t, "off the page", "%s, page %d: %s %q %v leaves %v", what, i+1, q.Name, q.Says, q.Box, inside)
			}
			if toRead(q) {
				for _, r := range read {
					if q.Box.Overlaps(r.Box) {
						require.Failf(t, "overlap", "%s, page %d: %q %v and %q %v", what, i+1, q.Says, q.Box, r.Says, r.Box)
					}
				}
				read = append(read, q)
			}
		}
	}
}

// TestNothingOverlaps lays decks out on every paper and finds no words that run
// into others and nothing outside the margins.
func TestNothingOverlaps(t *testing.T) {
	decks := append(realDecks(t), namedDeck{"torture", tortureDeck(t)})
	for i, d := range decks {
		for _, p := range allPapers() {
			o := Pages{Paper: p, Units: Units((i + int(p)) % 4)}
			checkPages(t, fmt.Sprintf("%s on %s, units %d", d.Name, o.Paper, o.Units), laid(t, d, o), p.margin())
		}
	}
}

// TestRunSheetSpeaksToTheTable finds no words on a run sheet that only who edits
// the plan can follow: no line of it, and no key to write that is not said to be for
// the plan.
func TestRunSheetSpeaksToTheTable(t *testing.T) {
	forThePlan := regexp.MustCompile(`, line \d|(?:^|[^n]) (?:write )?(?:by|start|ends|fence): `)
	warned := 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{})
		for _, row := range s.warningRows(d.deck) {
			var said []string
			for _, p := range row.Parts {
				said = append(said, p.Says)
			}
			words := strings.Join(said, " ")
			assert.NotRegexp(t, forThePlan, strings.ReplaceAll(words, "in the plan write fence: ", ""), d.Name)
			warned++
		}
	}
	assert.Greater(t, warned, 20)
}

// What goes on of a run sheet has the first setup under it where there is room, and a
// small front of a whole deck stays by itself.
func TestNoPageForTheRestOfARunSheet(t *testing.T) {
	shared := 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{Paper: Letter})
		front := len(s.runSheet(d.deck))
		n := 0
		for p := range s.sheets(d.deck) {
			n++
			setup := hasRun(paper.Block{Parts: p.Parts})
			assert.False(t, setup && n < front, d.Name)
			if n == front && setup {
				shared++
				assert.Greater(t, front, 1, d.Name)
			}
		}
	}
	assert.Greater(t, shared, 5)
}
