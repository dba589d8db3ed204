package paper

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A block twice as large is drawn as the block is, all places and sizes doubled.
func TestMagnified(t *testing.T) {
	d := &Drawing{W: 10, H: 5}
	d.Stroke(Thick, At(0, 0), At(10, 5))
	d.Circle(At(3, 3), 1, Mid, Thin)
	d.Text(Phrase{}.Say(Letters{Height: 3}, "up").Set(10), 1, 1)
	b := d.Block()
	large := Magnified(b, 2)
	assert.Equal(t, Paper(20), large.W)
	assert.Equal(t, 2*b.Parts[1].Box.W, large.Parts[1].Box.W)
	var r Recorder
	Paint(&r, large.At(4, 2))
	assert.Contains(t, r.String(), "line 1 0: 4,2 24,12\n")
	assert.Contains(t, r.String(), "circle 0.3 0.5: 10,8 r 2\n")
	assert.Contains(t, r.String(), "text 6:")
}
