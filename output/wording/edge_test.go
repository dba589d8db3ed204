package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

func TestAShapedEdgeIsSetByItsPilot(t *testing.T) {
	in := measure.Inch
	say := measure.InchScale.Format
	bit := &joinery.Bit{Diameter: 3 * in / 2, Pilot: in / 2, Outline: &joinery.Outline{Shape: joinery.Round, Radius: in / 2}}
	at := func(b *joinery.Bit, near measure.Length) string {
		return wording.Bury(&deck.Setup{Bit: b, Fence: deck.FenceAt(b, near)}, say)
	}
	assert.Contains(t, at(bit, -in), "flush with the fence")
	assert.Contains(t, at(bit, -9*in/8), "stands 1/8 forward of it")
	assert.Contains(t, at(&joinery.Bit{Diameter: in}, -in/4), "bury the bit")
	assert.Empty(t, at(&joinery.Bit{Diameter: in}, in/4))
	assert.Equal(t, "a round-over of 1/2", wording.Shape(bit.Outline, say))
	assert.Equal(t, "passes take 0.025, 0.028 sq in", wording.PassesTake([]float64{16.364, 18.249}, measure.InchScale))
	assert.Equal(t, "the pass takes 7.7 mm2", wording.PassesTake([]float64{7.72}, measure.Scale{Unit: measure.Millimetres}))
}
