package sheets

import (
	"fmt"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

var readOn = regexp.MustCompile(`read cautions on slip (\d+) before running`)

// TestSlipsNameEachOther lays out every card in every small format: the slips
// of a card that takes several are numbered, and the first has the gravest
// caution or says on which slip that is.
func TestSlipsNameEachOther(t *testing.T) {
	t.Parallel()
	several, sent, told := 0, 0, 0
	decks := []*deck.Deck{slenderDeck(t)}
	for _, e := range exampleDecks(t) {
		decks = append(decks, e.deck)
	}
	for _, d := range decks {
		for _, o := range []Pages{{Paper: Index}, {PerPage: 4}, {Paper: A5, PerPage: 2}, {}} {
			s, err := newSetter(d, o)
			require.NoError(t, err)
			for i := range d.Setups {
				u := &d.Setups[i]
				for k := range u.Runs {
					r := &u.Runs[k]
					slips := s.card(u, r)
					if len(slips) == 1 {
						assert.NotContains(t, paper.Said(slips[0]), "slip ")
						continue
					}
					several++
					for n, slip := range slips {
						assert.Contains(t, paper.Said(slip), fmt.Sprintf("slip %d of %d", n+1, len(slips)), "card %s", r.Number())
					}
					if len(r.Cautions) == 0 {
						continue
					}
					on := func(slip paper.Block) bool {
						text := SaidOnCard([]paper.Block{slip})
						return strings.Contains(text, OneLine(r.Cautions[0].Brief)) || strings.Contains(text, OneLine(r.Cautions[0].Words))
					}
					if on(slips[0]) {
						told++
						continue
					}
					sent++
					m := readOn.FindStringSubmatch(SaidOnCard(slips[:1]))
					require.NotNil(t, m, "card %s: %s", r.Number(), paper.Said(slips[0]))
					var n int
					fmt.Sscan(m[1], &n)
					assert.True(t, n <= len(slips) && on(slips[n-1]), "card %s: no caution on slip %d", r.Number(), n)
				}
			}
		}
	}
	assert.Positive(t, several)
	assert.Positive(t, told)
	assert.Positive(t, sent)
}
