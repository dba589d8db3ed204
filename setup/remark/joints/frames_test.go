package joints_test

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup/internal/workpiece"
)

// A table of two frames, each two legs and a side rail, held apart by two long rails
// between the legs and a stretcher between the side rails.
const stretchedTable = `unit: in
wood: cherry
pieces:
  - piece: front left leg
    size: {left-right: 1 1/2, front-back: 1 1/2, top-bottom: 26}
  - piece: front right leg
    size: {left-right: 1 1/2, front-back: 1 1/2, top-bottom: 26}
  - piece: back left leg
    size: {left-right: 1 1/2, front-back: 1 1/2, top-bottom: 26}
  - piece: back right leg
    size: {left-right: 1 1/2, front-back: 1 1/2, top-bottom: 26}
  - piece: front rail
    size: {left-right: %[1]s, front-back: 3/4, top-bottom: 3 1/2}
  - piece: back rail
    size: {left-right: %[2]s, front-back: 3/4, top-bottom: 3 1/2}
  - piece: left side rail
    size: {left-right: 3/4, front-back: 13 1/2, top-bottom: 3 1/2}
  - piece: right side rail
    size: {left-right: 3/4, front-back: 13 1/2, top-bottom: 3 1/2}
  - piece: stretcher
    size: {left-right: %[3]s, front-back: 3/4, top-bottom: 3/4}
joints:
  - mortise and tenon: front rail
    tenon: front rail / left, right
    into: front left leg / right, front right leg / left
    place: {top: flush, front: 1/8 back}
    thickness: 1/4
    shoulders: {top: 1/2, bottom: 1/4}
    length: 5/8
    deeper: 1/16
  - mortise and tenon: back rail
    tenon: back rail / left, right
    into: back left leg / right, back right leg / left
    place: {top: flush, back: 1/8 forward}
    thickness: 1/4
    shoulders: {top: 1/2, bottom: 1/4}
    length: 5/8
    deeper: 1/16
  - mortise and tenon: side rail
    tenon: left side rail / front, back
    into: front left leg / back, back left leg / front
    place: {top: flush, left: 1/8 right}
    thickness: 1/4
    shoulders: {top: 1/2, bottom: 1/4}
    length: 5/8
    deeper: 1/16
    play: 0.006
  - mortise and tenon: right side rail
    tenon: right side rail / front, back
    into: front right leg / back, back right leg / front
    place: {top: flush, right: 1/8 left}
    thickness: 1/4
    shoulders: {top: 1/2, bottom: 1/4}
    length: 5/8
    deeper: 1/16
    play: 0.006
  - mortise and tenon: stretcher
    tenon: stretcher / left, right
    into: left side rail / right, right side rail / left
    place: {bottom: 1/4 up, front: 6 back}
    thickness: 1/4
    shoulders: {front: 1/4}
    length: 3/8
    deeper: 1/16
`

// The stretcher's shoulders are as far apart as the long rails' and, as a side rail lies
// 5/8 in from the inner face of its legs, twice as much more (worked out).
func TestFramesApart(t *testing.T) {
	const (
		off = `"stretcher", 17 3/4 in long, holds "left side rail" and "right side rail" 17 in apart, but where "front rail", 18 in long, holds "front left leg" and "front right leg" they stand 18 in apart: ` +
			`make it 18 3/4 in long, 1 in longer, or the other so much shorter`
		back = `"back rail", 19 in long, holds "back left leg" and "back right leg" 17 3/4 in apart, but where "front rail", 18 in long, holds "front left leg" and "front right leg" they stand 16 3/4 in apart: ` +
			`make it 18 in long, 1 in shorter, or the other so much longer`
	)
	for _, c := range []struct {
		front, back, stretcher string
		want                   []string
	}{
		{"18", "18", "18 3/4", nil},
		{"18", "18", "17 3/4", []string{off}},
		{"18", "19", "18 3/4", []string{back}},
		{"18", "18", "18 49/64", nil}, // the play of the side rails covers it
	} {
		plan, err := planfile.Read("table.yaml", []byte(fmt.Sprintf(stretchedTable, c.front, c.back, c.stretcher)), nil)
		require.NoError(t, err)
		var found []string
		for _, w := range workpiece.DeckOf(t, plan).Warnings {
			if w.Code == "frames-differ" {
				found = append(found, w.Text)
			}
		}
		assert.Equal(t, c.want, found, c)
	}
}
