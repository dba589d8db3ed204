package joints_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// Two like rails in four legs that mirror one another: the right one is the
// left one turned end for end, so that its tenons lie otherwise in their legs.
func TestLikeRailsAreNotComparedWithEachOther(t *testing.T) {
	text := `unit: in
pieces:
  - piece: front left leg
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: rail, in: back, width: 3/8, setback: 1/2 from left, span: 1/2 to 3 from top, depth: 1, ends: square, mates: side rail / front}
  - piece: front right leg
    mirror: {of: front left leg, across: left-right}
  - piece: back left leg
    mirror: {of: front left leg, across: front-back}
  - piece: back right leg
    mirror: {of: front left leg, across: [left-right, front-back]}
  - piece: side rail
    count: 2
    size: {left-right: 3/4, front-back: 12, top-bottom: 3}
    cuts:
      - {tenon: front, at: front, length: 15/16, cheeks: {left: 3/16, right: 3/16, top: 1/4, bottom: 1/4}}
      - {tenon: back, at: back, length: 15/16, cheeks: {left: 3/16, right: 3/16, top: BACK, bottom: 1/4}}
`
	said := func(back string, count string) []string {
		text := strings.NewReplacer("BACK", back, "count: 2", "count: "+count).Replace(text)
		plan, err := planfile.Read("legs.yaml", []byte(text), nil)
		require.NoError(t, err)
		codes, _ := jointWarnings(workpiece.DeckOf(t, plan))
		return codes
	}
	assert.NotContains(t, said("1/4", "2"), "place-differs")
	assert.Contains(t, said("1/4", "1"), "place-differs", "a single one cannot lie in all four")
	assert.Contains(t, said("3/8", "2"), "place-differs", "skewed whichever way it is turned")
}

// The lap takes the tenon's width down to its mortise and leaves a stub beside
// it, the haunch (Handwork in Wood, ch. VII).
func TestAHaunchedTenonIsAsWideAsItsLapLeavesIt(t *testing.T) {
	haunched := func(lap string) []string {
		codes, _ := jointWarnings(workpiece.JointDeck(t, map[string]string{
			"mortise": "in: right, width: 3/8, setback: 1/2 from front, span: 3/4 to 3 from top, depth: 15/16, ends: square",
			"tenon":   "at: left, length: 7/8, cheeks: {front: 0.2525, back: 1/4}, mates: leg / seat}\n      - {lap: haunch, in: top, at: left, " + lap,
			"mates":   "",
		}))
		return codes
	}
	assert.Empty(t, haunched("length: 5/8, depth: 3/4"))
	assert.Equal(t, []string{"part-too-wide"}, haunched("length: 5/8, depth: 1/2"), "not deep enough")
	assert.Equal(t, []string{"part-too-wide"}, haunched("length: 1/4, depth: 3/4"), "most of the tenon is as wide as the rail")
}

// A frame halved at its corners: each of the rail's two laps meets that of its own stile,
// so that none is said to meet the other.
func TestAHalvedFrame(t *testing.T) {
	plan, err := planfile.Read("frame.yaml", []byte(`unit: in
wood: cherry
pieces:
  - {piece: left stile, size: {left-right: 1 1/2, front-back: 3/4, top-bottom: 20}}
  - {piece: right stile, mirror: {of: left stile, across: left-right}}
  - {piece: rail, size: {left-right: 16, front-back: 3/4, top-bottom: 2}}
joints:
  - {halving: corner, lap: [rail / left, rail / right], into: [left stile / front, right stile / front], place: {bottom: flush}}
`), nil)
	require.NoError(t, err)
	d := workpiece.DeckOf(t, plan)
	require.Len(t, d.Joints, 2)
	codes, text := jointWarnings(d)
	assert.Empty(t, codes, text)
	ends := map[string]string{}
	for _, j := range d.Joints {
		for _, h := range []deck.Half{j.Into, j.Part} {
			if h.Piece.Name == "rail" {
				other := j.Part.Piece
				if other == h.Piece {
					other = j.Into.Piece
				}
				ends[other.Name] = h.Cut.At.String()
			}
		}
	}
	assert.Equal(t, map[string]string{"left stile": "left", "right stile": "right"}, ends)
}
