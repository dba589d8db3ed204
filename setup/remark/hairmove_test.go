package remark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/planfile"
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

// What goes into a slot for a screw's head is no mate that could be fitted to it.
func TestHairMoveOfAScrewSlot(t *testing.T) {
	plan, err := planfile.Read("slot.yaml", []byte(`unit: in
wood: cherry
shop: {bits: [{bit: three eighths, kind: up-cut, diameter: 3/8, plunges: yes}, {bit: small, kind: up-cut, diameter: 3/16, plunges: yes}]}
pieces:
  - piece: batten
    size: {left-right: 20, front-back: 2, top-bottom: 3/4}
    cuts: [{slot: screw, in: bottom, at: [4 from left, 1 from front], along: left-right, screw: 3/16, head: 0.378, head depth: 3/8, move: 1/4}]
`), nil)
	require.NoError(t, err)
	found := ""
	for _, w := range workpiece.DeckOf(t, plan).Warnings {
		if w.Code == "hair-move" {
			found += w.Text
		}
	}
	assert.Contains(t, found, "write head: 3/8 in where the screw still moves in that, or put a shim of 0.003 in")
}

// Two depths at one setup that no rule shows apart are told, the deeper of them; one
// division is shown.
func TestHairHeight(t *testing.T) {
	for second, want := range map[string]bool{"0.253": true, "0.247": true, "17/64": false, "1/4": false} {
		bit := workpiece.BitOf(workpiece.In(t, "1/2"))
		bit.Name = "half"
		other := workpiece.Groove(t, "other", "1/2", "2")
		other.In, other.Depth = joinery.Back, workpiece.In(t, second)
		d := workpiece.DeckOf(t, workpiece.BoardWith(t, []joinery.Bit{bit}, workpiece.Groove(t, "shelf", "1/2", "2"), other))
		var found []string
		for _, w := range d.Warnings {
			if w.Code == "hair-height" {
				found = append(found, w.Text)
			}
		}
		if !want {
			assert.Empty(t, found, second)
			continue
		}
		if assert.Len(t, found, 1, second) {
			assert.Contains(t, found[0], "0.003 in more than another cut at setup 1, and no rule shows that move of the bit")
		}
	}
}
