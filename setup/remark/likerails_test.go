package remark_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/remark"
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
		codes, _ := jointWarnings(jointDeck(t, map[string]string{
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

func TestTheMeetingOfAGrooveAndADadoSpeaksOfNoTenon(t *testing.T) {
	meeting := func(a, b string) string {
		for _, w := range workpiece.DeckOf(t, workpiece.PieceFrom(t, "20 2 2", a, b)).Warnings {
			if w.Code == "cuts-meet" {
				return w.Text
			}
		}
		return ""
	}
	said := meeting("groove a top 1/4 1/2:back - 1", "dado b back 1/4 4:left - 1")
	assert.Contains(t, said, `the groove "a" in the top and the dado "b" in the back meet`)
	assert.NotContains(t, said, "tenon")
	said = meeting("mortise a top 1/4 1/2:back 3-6:left 1", "mortise b back 1/4 1/2:top 3-6:left 1")
	assert.Contains(t, said, "mitre the ends of both tenons")
}

func TestACauseIsSaidOnce(t *testing.T) {
	plan := workpiece.PieceFrom(t, "20 2 1_1/2", "mortise a top 1/4 1/8:front 2-4:left 1/2", "mortise b bottom 1/4 1/8:front 8-10:left 1/2",
		"mortise c top 1/4 3/16:front 14-16:left 1/2")
	d := workpiece.DeckOf(t, plan)
	var said []string
	for _, w := range remark.Once(d) {
		if w.Code == "thin-wall" {
			said = append(said, w.Text)
		}
	}
	require.Len(t, said, 2, "other figures are another cause")
	assert.Contains(t, said[0], `(likewise "b" of "piece")`)
	assert.NotContains(t, said[1], "likewise")
	many := deck.Deck{Plan: plan}
	for _, name := range "abcdefghijkl" {
		many.Warnings = append(many.Warnings, deck.Warning{Code: "x", Piece: string(name), Text: string(name) + ": thin"})
	}
	once := remark.Once(&many)
	require.Len(t, once, 1)
	assert.Contains(t, once[0].Text, `a: thin (likewise "b"; "c"`)
	assert.Contains(t, once[0].Text, `; and 3 more)`)
}
