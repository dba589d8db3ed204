package sheets

import (
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// What a sheet says at the table is to be followed as it stands there: nothing is
// changed at a bit that is not unplugged, and a trial says from where it is measured.
func TestSheetsSpeakPlainly(t *testing.T) {
	unclear := regexp.MustCompile(`raise it at most|scrap: to (slot|shoulder)|The stop stands|heights [0-9/. ]+; \d+ run`)
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
