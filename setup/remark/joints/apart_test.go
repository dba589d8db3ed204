package joints_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup/internal/workpiece"
)

const framedShelf = `unit: in
wood: white oak
pieces:
  - piece: left side
    size: {left-right: 3/4, front-back: 10, top-bottom: 30}
  - piece: right side
    mirror: {of: left side, across: left-right}
  - piece: shelf
    size: {left-right: %s, front-back: 9, top-bottom: 3/4}
  - piece: low shelf
    size: {left-right: %s, front-back: 9, top-bottom: 3/4}
%sjoints:
  - housing: shelf
    board: shelf / left, right
    into: left side / right, right side / left
    place: {top: 5 down, back: flush}
    depth: 1/4
  - housing: low shelf
    board: low shelf / left, right
    into: left side / right, right side / left
    place: {top: 9 down, back: flush}
    depth: 3/8
%s`

const stretcher = `  - piece: rail
    size: {left-right: %s, front-back: 3/4, top-bottom: 3}
`

const stretcherJoint = `  - mortise and tenon: rail
    tenon: rail / left, right
    into: left side / right, right side / left
    place: {top: 12 down, front: 1 back}
    thickness: 1/4
    shoulders: {top: 1/4, bottom: 1/4, front: 1/4}
    length: 1/2
    ends: square
`

// The shoulders of a rail say how far the sides stand apart, and of boards alone the
// shortest does. What goes in deeper is as much longer (worked out).
func TestLongerThanItsFrame(t *testing.T) {
	for _, c := range []struct {
		shelf, low, rail string
		want             []string
	}{
		{"24", "24 1/4", "", nil},
		{"24", "24 1/4", "24 1/2", nil},
		{"23 31/32", "24", "24 1/2", nil}, // a board may stay off the bottom of its housing
		{"24", "24 1/4", "24", []string{
			`"shelf" is 24 in long and goes 1/4 in into "left side" and 1/4 in into "right side", so that 23 1/2 in are left between them, but "rail" leaves 23 in: make it 23 1/2 in, or the other 1/2 in longer`,
			`"low shelf" is 24 1/4 in long and goes 3/8 in into "left side" and 3/8 in into "right side", so that 23 1/2 in are left between them, but "rail" leaves 23 in: make it 23 3/4 in, or the other 1/2 in longer`}},
		{"24 1/8", "24 1/4", "", []string{
			`"shelf" is 24 1/8 in long and goes 1/4 in into "left side" and 1/4 in into "right side", so that 23 5/8 in are left between them, but "low shelf" leaves 23 1/2 in: make it 24 in, or the other 1/8 in longer`}},
	} {
		piece, joint := "", ""
		if c.rail != "" {
			piece, joint = fmt.Sprintf(stretcher, c.rail), stretcherJoint
		}
		plan, err := planfile.Read("case.yaml", []byte(fmt.Sprintf(framedShelf, c.shelf, c.low, piece, joint)), nil)
		require.NoError(t, err)
		var found []string
		for _, w := range workpiece.DeckOf(t, plan).Warnings {
			if w.Code == "too-long" {
				found = append(found, w.Text)
			}
		}
		assert.Equal(t, c.want, found, "%s, %s, %s", c.shelf, c.low, c.rail)
	}
}
