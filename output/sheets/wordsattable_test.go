package sheets

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/output/paper"
)

// What a sheet says at the table is to be followed as it stands there: nothing is
// changed at a bit that is not unplugged, and a trial says from where it is measured.
func TestSheetsSpeakPlainly(t *testing.T) {
	unclear := regexp.MustCompile(`raise it at most|scrap: to (wall|shoulder)|The stop stands|heights [0-9/. ]+; \d+ run`)
	raised := 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{})
		said := ""
		for p := range s.sheets(d.deck) {
			for _, part := range p.Parts {
				said += part.Says + " "
			}
		}
		assert.NotRegexp(t, unclear, said, d.Name)
		raised += strings.Count(said, "switch off, unplug, raise, lock")
	}
	assert.Greater(t, raised, 50)
}

// A setup of several heights and pairs of marks is gone through height by height: its
// head says so, and the cards of its pieces. The places of the back stops are marked
// before the bit stands above the table. Between stop blocks each setting says its own.
func TestSheetsSayTheOrderOfHeightsAndPairs(t *testing.T) {
	said, carded, marked := 0, 0, 0
	for _, d := range realDecks(t) {
		blocks := d.deck.Plan.Shop.Stops == joinery.Blocks
		for _, on := range []PaperSize{Letter, Index} {
			s := newSetter(d.deck, Pages{Paper: on})
			for i := range d.deck.Setups {
				u := &d.deck.Setups[i]
				head, more := s.head(d.deck, i, s.minds[u.Number], 1)
				words := saidIn(head)
				for _, b := range more {
					words += "|" + saidIn(b)
				}
				words = strings.ReplaceAll(words, "|", " ")
				choice := len(u.Heights) > 1 && len(u.Marks) > 1
				if choice {
					assert.Equal(t, !blocks, strings.Contains(words, " at one height, then the next"), "%s, setup %d on %s: %s", d.Name, u.Number, on, words)
					said++
				}
				if strings.Contains(words, "BACK STOP:") {
					drops := 0
					for _, p := range u.Marks {
						if p.Start != nil {
							drops++
						}
					}
					assert.Equal(t, drops > 1 && len(u.Heights) > 1, strings.Contains(words, "pair by pair.") || strings.Contains(words, "before height 1,"), "%s, setup %d on %s", d.Name, u.Number, on)
					marked++
				}
			}
		}
		s := newSetter(d.deck, Pages{})
		for p := range s.pieceCards(d.deck) {
			if strings.Contains(strings.ReplaceAll(saidIn(paper.Block{Parts: p.Parts}), "|", " "), "At a setup all runs at one height, then the next.") {
				assert.False(t, blocks, d.Name)
				carded++
			}
		}
	}
	assert.Greater(t, said, 20)
	assert.Greater(t, marked, 10)
	assert.Greater(t, carded, 10)
}

// What leads may be an end of the work or an edge of it: a run on a page of its own
// names the side, and calls it neither.
func TestRunPageSaysWhichSideLeads(t *testing.T) {
	d := realDecks(t)[0].deck
	s := newSetter(d, Pages{})
	edges := 0
	for i := range d.Setups {
		u := &d.Setups[i]
		r := &u.Runs[0]
		said := ""
		for _, b := range s.runPage(u, r) {
			said += strings.ReplaceAll(saidIn(b), "|", " ") + " "
		}
		assert.Contains(t, said, strings.ToUpper(r.Shown(r.Leads))+" LEADS", "run %s", r.Number())
		if r.Leads.Dimension() != r.Piece.Grain {
			edges++
		}
	}
	assert.Positive(t, edges)
}
