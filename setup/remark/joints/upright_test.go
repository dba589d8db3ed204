package joints_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup/internal/workpiece"
)

// A case whose sides say where bottom and top lie, 24 1/2 apart (worked out: 30 high, 2 at
// either end and 3/4 of each board off), and two dividers between these.
const dividedCase = `unit: in
wood: cherry
pieces:
  - piece: left side
    size: {left-right: 3/4, front-back: 11, top-bottom: 30}
  - piece: right side
    mirror: {of: left side, across: left-right}
  - piece: bottom
    size: {left-right: 30 between shoulders, front-back: 11, top-bottom: 3/4}
  - piece: top
    size: {left-right: 30 between shoulders, front-back: 11, top-bottom: 3/4}
  - piece: divider
    count: 2
    size: {left-right: 3/4, front-back: 11, top-bottom: %s}
joints:
  - housing: bottom
    board: bottom / left, right
    into: left side / right, right side / left
    place: {bottom: 2 up, front: flush}
    depth: 1/4
  - housing: top
    board: top / left, right
    into: left side / right, right side / left
    place: {top: 2 down, front: flush}
    depth: 1/4
  - housing: divider
    board: divider / bottom, top
    into: bottom / top, top / bottom
    place: {left: 6 right, front: flush}
    depth: 1/4
  - housing: other divider
    board: divider / bottom, top
    into: bottom / top, top / bottom
    place: {right: 6 left, front: flush}
    depth: 1/4
`

// A door whose middle stile stands between the rails, 16 apart (worked out), by tenons.
const dividedDoor = `unit: in
wood: cherry
pieces:
  - piece: left stile
    size: {left-right: 2, front-back: 3/4, top-bottom: 20}
  - piece: right stile
    mirror: {of: left stile, across: left-right}
  - piece: bottom rail
    size: {left-right: 14 between shoulders, front-back: 3/4, top-bottom: 2}
  - piece: top rail
    size: {left-right: 14 between shoulders, front-back: 3/4, top-bottom: 2}
  - piece: middle stile
    size: {left-right: 2, front-back: 3/4, top-bottom: %s}
joints:
  - mortise and tenon: bottom rail
    tenon: bottom rail / left, right
    into: left stile / right, right stile / left
    place: {bottom: flush, centred: front-back}
    thickness: 1/4
    shoulders: {top: 1/4, bottom: 1/2}
    length: 1
  - mortise and tenon: top rail
    tenon: top rail / left, right
    into: left stile / right, right stile / left
    place: {top: flush, centred: front-back}
    thickness: 1/4
    shoulders: {top: 1/2, bottom: 1/4}
    length: 1
  - mortise and tenon: middle stile
    tenon: middle stile / bottom, top
    into: bottom rail / top, top rail / bottom
    place: {left: 7 right, centred: front-back}
    thickness: 1/4
    shoulders: {left: 1/4, right: 1/4}
    length: 3/4
`

func TestUprightTooLong(t *testing.T) {
	for _, c := range []struct {
		plan, length string
		want         []string
	}{
		{dividedCase, "25", nil},
		{dividedCase, "24 63/64", nil},
		{dividedCase, "25 1/4", []string{`"divider" is 25 1/4 in long and goes 1/4 in into "bottom" and 1/4 in into "top", so that 24 3/4 in are left between them, ` +
			`but as these lie in their own joints they are 24 1/2 in apart: make it 25 in, or place them 1/4 in further apart`}},
		{dividedDoor, "17 1/2", nil},
		{dividedDoor, "18", []string{`"middle stile" is 18 in long and goes 3/4 in into "bottom rail" and 3/4 in into "top rail", so that 16 1/2 in are left between them, ` +
			`but as these lie in their own joints they are 16 in apart: make it 17 1/2 in, or place them 1/2 in further apart`}},
	} {
		plan, err := planfile.Read("case.yaml", []byte(fmt.Sprintf(c.plan, c.length)), nil)
		require.NoError(t, err)
		var found []string
		for _, w := range workpiece.DeckOf(t, plan).Warnings {
			if w.Code == "too-long" {
				found = append(found, w.Text)
			}
		}
		assert.Equal(t, c.want, found, c.length)
	}
}
