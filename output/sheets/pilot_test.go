package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/paper"
	"fencecard/output/wording"
)

// Who measures to the top of the pilot, which stands above what cuts, cuts too
// shallow: sheets and single runs say to what the height is.
func TestHeightsOfABitWithAPilotAreToItsUnderside(t *testing.T) {
	piloted := 0
	for _, d := range realDecks(t) {
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			for _, p := range []PaperSize{Letter, Index} {
				s := newSetter(d.deck, Pages{Paper: p})
				said := func(blocks []paper.Block) bool {
					words := saidIn(paper.Stack(0, blocks...))
					words = strings.ReplaceAll(words, "|", " ")
					return strings.Contains(words, wording.HeightToPilot) || strings.Contains(words, "HEIGHTS "+wording.HeightUnder)
				}
				assert.Equal(t, u.Bit.Pilot > 0, said(s.setupSheet(d.deck, i, s.body().H)), "%s, setup %d on %s", d.Name, u.Number, p)
				assert.Equal(t, u.Bit.Pilot > 0, said(s.runPage(u, &u.Runs[0])), "%s, run %s on %s", d.Name, u.Runs[0].Number(), p)
			}
			if u.Bit.Pilot > 0 {
				piloted++
			}
		}
	}
	assert.Greater(t, piloted, 3)
}
