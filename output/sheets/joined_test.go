package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// A card names all pieces that its piece is joined to, also those that take it whole:
// where one card names another piece, the other names it too.
func TestCardsNameAllTheyAreJoinedTo(t *testing.T) {
	whole := 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{})
		foot := map[string]string{}
		for _, c := range d.deck.Cards() {
			var said string
			for _, g := range s.cardGroups(d.deck, &c, 85, false) {
				for _, b := range g.words {
					said += " " + saidIn(b)
				}
				for _, p := range g.said {
					said += " " + saidIn(p.Set(85))
				}
			}
			foot[c.Piece.Name] = strings.ReplaceAll(said, "|", " ")
		}
		for _, j := range d.deck.Joints {
			for _, half := range [2][2]string{{j.Into.Piece.Name, j.Part.Piece.Name}, {j.Part.Piece.Name, j.Into.Piece.Name}} {
				_, joined, ok := strings.Cut(foot[half[0]], "Joined to ")
				if !ok {
					assert.Contains(t, foot[half[0]], "no cuts", "%s: %s", d.Name, half[0])
					joined = foot[half[0]]
				}
				assert.Contains(t, strings.Join(strings.Fields(joined), " "), half[1], "%s: card of %s", d.Name, half[0])
			}
			if j.Part.Cut == nil {
				whole++
			}
		}
	}
	assert.Positive(t, whole)
}
