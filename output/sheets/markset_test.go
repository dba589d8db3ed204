package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/internal/render"
)

// On wide paper what is put at a mark stands right behind its name, and its number
// below, at every pair, also where the pair has no other mark.
func TestMarksAreSetAlike(t *testing.T) {
	set, alone := 0, 0
	for _, d := range realDecks(t) {
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			for k := range u.Marks {
				if p := &u.Marks[k]; p.Start == nil || p.Stop == nil {
					alone++
				}
			}
		}
		doc := printed(t, d.deck, Pages{Paper: Letter})
		for page := range doc.Pages() {
			pieces := doc.Pieces(page)
			for _, p := range pieces {
				if p.Text != "MARK, RIGHT" && p.Text != "MARK, LEFT" {
					continue
				}
				set++
				assert.True(t, anyBefore(pieces, p), "%s, page %d: %q stands far from its name", d.Name, page+1, p.Text)
			}
		}
	}
	assert.Positive(t, set)
	assert.Positive(t, alone)
}

// anyBefore reports whether the name of a mark stands right before a piece of text.
func anyBefore(pieces []render.Piece, p render.Piece) bool {
	const near = 5 // mm
	for _, q := range pieces {
		if (q.Text == "START" || q.Text == "STOP") && p.Box.Left-q.Box.Right < near && p.Box.Left > q.Box.Right && p.Box.Top < q.Box.Bottom && q.Box.Top < p.Box.Bottom {
			return true
		}
	}
	return false
}
