package sheets

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/deck"
)

// The trial of a shaped edge is measured at its full height, over the face and up
// the edge: the round-over of 1/2 in on the bench seat takes two heights.
func TestTrialOfAShapedEdge(t *testing.T) {
	tried := 0
	for _, d := range realDecks(t) {
		for i := range d.deck.Setups {
			u := &d.deck.Setups[i]
			if !slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Channel.Section.Shaped() }) {
				continue
			}
			doc := printed(t, d.deck, Pages{Only: OnlySetups})
			full := newSetter(d.deck, Pages{}).Plain(u.Heights[len(u.Heights)-1])
			said := false
			for page := range doc.Pages() {
				var words []string
				for _, p := range doc.Pieces(page) {
					words = append(words, strings.TrimSpace(p.Text))
				}
				said = said || strings.Contains(strings.Join(words, " "), "up the edge "+full)
			}
			assert.True(t, said, "%s, setup %d: up the edge %s", d.Name, u.Number, full)
			tried++
		}
	}
	assert.Greater(t, tried, 3)
}
