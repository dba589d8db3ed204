package sheets

import (
	"fmt"
	"iter"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/output/paper"
	"fencecard/output/screen"
	"fencecard/output/wording"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// realDecks are the examples and every plan of the test data, which is not
// searched for the fewest changes: its cards are the same, or like them.
func realDecks(t testing.TB) []namedDeck {
	t.Helper()
	decks := exampleDecks(t)
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	for _, file := range files {
		plan, err := os.ReadFile(file)
		require.NoError(t, err)
		p, err := planfile.Read(file, plan, nil)
		require.NoError(t, err)
		d, err := setup.MakeWith(t.Context(), p, setup.Options{Plain: true})
		require.NoError(t, err)
		decks = append(decks, namedDeck{filepath.Base(file), d})
	}
	return decks
}

// SaidOnCard is everything the pieces of paper of a card say, in one line.
func SaidOnCard(blocks []paper.Block) string {
	var all []string
	for _, b := range blocks {
		all = append(all, strings.ReplaceAll(paper.Said(b), "|", " "))
	}
	return OneLine(strings.Join(all, " "))
}

// inFullOn reports whether a card says its gravest cautions in all their words
// or, brief, in their few.
func inFullOn(words string, r *deck.Run, brief bool) bool {
	for _, caution := range r.Cautions[:min(wording.InFull, len(r.Cautions))] {
		full := strings.Contains(words, OneLine(paper.Printable(caution.Words)))
		if !full && !(brief && strings.Contains(words, OneLine(paper.Printable(caution.Brief)))) {
			return false
		}
	}
	return true
}

// TestGravestCautionsAreInFull lays out the cards of real plans and finds on
// each the words of its gravest cautions, not their numbers: in each of the ways
// to print one card for every set of the gravest there is, and some more.
func TestGravestCautionsAreInFull(t *testing.T) {
	t.Parallel()
	decks := realDecks(t)
	all := allPages()
	for way, o := range all {
		t.Run(fmt.Sprintf("%d a page on %s", o.PerPage, o.Paper), func(t *testing.T) {
			t.Parallel()
			seen, cards, n := map[string]bool{}, 0, 0
			for _, c := range decks {
				s, err := newSetter(c.deck, o)
				require.NoError(t, err)
				for u, run := range runsOf(c.deck) {
					n++
					set := byNumbers(run)
					if seen[set] && n%(3*len(all)) != way {
						continue
					}
					seen[set] = true
					cards++
					words := SaidOnCard(s.card(u, run))
					assert.True(t, inFullOn(words, run, true), "%s, card %s: %s", c.Name, run.Number(), words)
				}
			}
			assert.Greater(t, cards, 50)
		})
	}
}

// runsOf gives the cards of a deck one after another, with their setups.
func runsOf(d *deck.Deck) iter.Seq2[*deck.Setup, *deck.Run] {
	return func(yield func(*deck.Setup, *deck.Run) bool) {
		for i := range d.Setups {
			u := &d.Setups[i]
			for k := range u.Runs {
				if !yield(u, &u.Runs[k]) {
					return
				}
			}
		}
	}
}

// byNumbers names the gravest cautions of a card.
func byNumbers(r *deck.Run) string {
	if len(r.Cautions) == 0 {
		return ""
	}
	return screen.ByNumber(r.Cautions[:min(wording.InFull, len(r.Cautions))])
}

// TestSmallCardsHaveFewWordsAndTheirPageAll finds the few words on small
// cards, and all of them on the page that stands behind the deck.
func TestSmallCardsHaveFewWordsAndTheirPageAll(t *testing.T) {
	d := slenderDeck(t)
	u, r := stoppedCard(t, d)
	s, err := newSetter(d, Pages{Paper: Index})
	require.NoError(t, err)
	words := SaidOnCard(s.card(u, r))
	assert.False(t, inFullOn(words, r, false))
	assert.True(t, inFullOn(words, r, true))
	pages := spoken(t, d, Pages{Paper: Index})
	for _, caution := range remark.CautionTable(&d.Plan.Shop) {
		assert.Contains(t, pages, OneLine(paper.Printable(caution.Words)))
	}
}
