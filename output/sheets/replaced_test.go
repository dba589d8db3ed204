package sheets

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Whatever of a maker's the fonts lack is told, wherever it stands, and once.
func TestReplaced(t *testing.T) {
	assert.Empty(t, Replaced(namedDeckOf(t, "Łódź Ω")))
	assert.Equal(t, `the pages have no letter for some of the names, and print "世" as [U+4E16]`, Replaced(namedDeckOf(t, "世 and 世")))
	assert.Contains(t, Replaced(namedDeckOf(t, "ṣ")), `"ṣ" as s`)
	assert.Contains(t, Replaced(namedDeckOf(t, "一丁七万丈三上下不与")), "and 2 more")
	for i := range 5 {
		d := namedDeckOf(t, "plain")
		r := &d.Setups[0].Runs[0]
		*[]*string{&d.Plan.Title, &d.Setups[0].Bit.Name, &r.Piece.Name, &r.Cut.Name, &r.Cut.Note}[i] = "木"
		assert.Contains(t, Replaced(d), "[U+6728]", "name %d", i)
	}
}
