package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/wording"
)

// The key to START and STOP stands on a card before its marks, never on a further part
// of it that lies beside another piece's card.
func TestKeyToTheMarksStandsBeforeThem(t *testing.T) {
	keyed := 0
	for _, d := range realDecks(t) {
		for _, p := range []PaperSize{Letter, A4, Index} {
			s := newSetter(d.deck, Pages{Paper: p})
			for _, c := range d.deck.Cards() {
				for i, part := range s.pieceCard(d.deck, &c, min(s.body().W, cardWidest), s.body().H) {
					said := strings.ReplaceAll(saidIn(part), "|", " ")
					at := strings.Index(said, wording.FromEdges)
					if at < 0 {
						continue
					}
					keyed++
					assert.Zero(t, i, "%s, %s on %s: on part %d", d.Name, c.Piece.Name, p, i+1)
					assert.NotContains(t, strings.ReplaceAll(said[:at], wording.FromEdges, ""), "START ", "%s, %s on %s", d.Name, c.Piece.Name, p)
				}
			}
		}
	}
	assert.Greater(t, keyed, 200)
}
