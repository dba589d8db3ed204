package sheets

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/output/wording"
)

var pairsOfStops = regexp.MustCompile(`(\d+) pairs? of stops`)

// The pairs that the list of setups counts come to what the sums above it say, and
// a pair that is set again says why.
func TestStopsAreCountedAlike(t *testing.T) {
	why, blocked := "", 0
	for _, d := range realDecks(t) {
		if d.deck.Plan.Shop.Stops != joinery.Blocks {
			continue
		}
		blocked++
		s := newSetter(d.deck, Pages{})
		n := 0
		for i := range d.deck.Setups {
			said := strings.ReplaceAll(saidIn(s.setupRow(d.deck, i)), "|", " ")
			assert.NotContains(t, said, "of marks", d.Name)
			if m := pairsOfStops.FindStringSubmatch(said); m != nil {
				more, _ := strconv.Atoi(m[1])
				n += more
			}
			if strings.Contains(said, "again") {
				why += said
			}
		}
		if n == 0 {
			assert.Zero(t, d.deck.Changes.Stops, d.Name)
			continue
		}
		assert.Contains(t, wording.ChangesCounted(d.deck), fmt.Sprintf(", %s of stops", wording.Plural(n, "pair")), d.Name)
	}
	assert.Greater(t, blocked, 2)
	assert.Contains(t, why, "5 pairs of stops (C again: 5.10 waits for 5.8)", "the nightstand")
}
