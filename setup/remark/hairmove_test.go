package remark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/setup/internal/workpiece"
)

// A bit measured a hair under its label leaves a move of the fence that no
// rule shows; one division is shown.
func TestHairMove(t *testing.T) {
	for measured, want := range map[string]bool{"0.496": true, "31/64": false, "1/2": false} {
		bit := workpiece.BitOf(workpiece.In(t, "1/2"))
		bit.Name, bit.Measured = "half", workpiece.In(t, measured)
		d := workpiece.DeckOf(t, workpiece.BoardWith(t, []joinery.Bit{bit}, workpiece.Groove(t, "shelf", "1/2", "2")))
		found := false
		for _, w := range d.Warnings {
			if w.Code == "hair-move" {
				found = true
				assert.Contains(t, w.Text, "write width: 0.496 in")
				assert.Contains(t, w.Text, "a shim of 0.004 in")
			}
		}
		assert.Equal(t, want, found, measured)
	}
}
