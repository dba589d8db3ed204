package sheets

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/wording"
)

// Whoever fits a bit reads under its name which collet it wants, on all but the
// fullest heads, and always in the list of bits.
func TestColletStandsUnderTheBit(t *testing.T) {
	under, fitted := 0, 0
	for _, d := range realDecks(t) {
		s := newSetter(d.deck, Pages{})
		var listed []string
		for _, row := range s.bitRows(d.deck) {
			listed = append(listed, saidIn(row))
		}
		list := strings.Join(listed, "\n")
		for i := range d.deck.Setups {
			bit := d.deck.Setups[i].Bit
			if bit.Shank == 0 || d.deck.BitStays(i) {
				continue
			}
			fitted++
			collet := wording.Collet(bit, s.Scale)
			assert.Contains(t, strings.ReplaceAll(list, "|", " "), collet, d.Name)
			head, _ := s.head(d.deck, i, s.minds[d.deck.Setups[i].Number], 1)
			if strings.Contains(strings.ReplaceAll(saidIn(head), "|", " "), collet) {
				under++
			}
		}
	}
	assert.Greater(t, fitted, 50)
	assert.GreaterOrEqual(t, under, fitted*9/10, "of %d", fitted)
}
