package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup"
)

const choiceBoard = "{left-right: 24, front-back: 3/4, top-bottom: 8}"

// A bit that is not known to plunge is not chosen where the work is dropped on
// while one that is can make the cut; a start hole lets any bit do.
func TestADropWantsAPlungingBit(t *testing.T) {
	const shop = "  bits:\n    - {bit: half, diameter: 1/2}\n    - {bit: quarter, diameter: 1/4, plunges: yes}\n    - {bit: blunt, diameter: 3/8, plunges: no}\n"
	groove := func(more string) string {
		return "{groove: a, in: back, width: 1/2, setback: 1 from top, span: 2 to 20 from left, depth: 1/8" + more + "}"
	}
	assert.Equal(t, "quarter", runsOf(t, shop, choiceBoard, groove(""))[0].Step.Bit.Name)
	assert.Equal(t, "half", runsOf(t, shop, choiceBoard, groove(", start: hole"))[0].Step.Bit.Name)
	assert.Equal(t, "half", runsOf(t, shop, choiceBoard, groove(", bit: half"))[0].Step.Bit.Name)
	const alone = "  bits:\n    - {bit: half, diameter: 1/2}\n"
	assert.Equal(t, "half", runsOf(t, alone, choiceBoard, groove(""))[0].Step.Bit.Name, "the start hole of the caution is the way out")
}

// The centre of the bit runs in the wood of a stopped rabbet, so that its end is
// reached.
func TestAStoppedRabbetTakesANarrowBit(t *testing.T) {
	const shop = "  bits:\n    - {bit: three quarter, diameter: 3/4, plunges: yes}\n    - {bit: half, diameter: 1/2, plunges: yes}\n"
	assert.Equal(t, "half", runsOf(t, shop, choiceBoard, "{rabbet: a, in: back, along: top, width: 1/4, span: 2 to 20 from left, depth: 1/8}")[0].Step.Bit.Name)
	assert.Equal(t, "three quarter", runsOf(t, shop, choiceBoard, "{rabbet: a, in: back, along: top, width: 3/8, span: 2 to 20 from left, depth: 1/8}")[0].Step.Bit.Name)
}

// A bit of the exact width that can be dropped on costs one run and no fit, and
// that is why it is chosen: where a bit costs more than both, it is not.
func TestTheExactBitWinsByItsCost(t *testing.T) {
	bits := "  bits:\n    - {bit: half, diameter: 1/2, plunges: yes}\n    - {bit: quarter, diameter: 1/4, plunges: yes}\n"
	pieces := `  - piece: board
    size: {left-right: 24, front-back: 3/4, top-bottom: 8}
    cuts:
      - {groove: a, in: back, width: 1/2, setback: 1 from top, span: 2 to 20 from left, depth: 1/8}
      - {groove: b, in: front, width: 1/4, setback: 1 from top, span: 2 to 20 from left, depth: 1/8}
`
	// Half and quarter: 2 bits, 2 fences, 2 heights, 2 runs. Quarter alone: 1 bit,
	// 3 fences (one shared), 3 heights, 4 runs and a fit.
	for minutes, want := range map[string]int{
		"  minutes: {bit: 3, fence: 2, height: 0.5, pass: 0.2, fit: 2}\n":  2,
		"  minutes: {bit: 30, fence: 2, height: 0.5, pass: 0.2, fit: 2}\n": 1,
	} {
		d, err := setup.Make(planFrom(t, minutes+bits, pieces))
		assert.NoError(t, err)
		assert.Equal(t, want, d.Changes.Bits, minutes)
		assert.True(t, d.Changes.Proved)
	}
}

func TestTheOneBitThatACutNames(t *testing.T) {
	const shop = "  bits:\n    - {bit: half, diameter: 1/2, plunges: no, cutting: 1}\n    - {bit: quarter, diameter: 1/4, plunges: yes}\n"
	for cut, want := range map[string]string{
		"{groove: a, in: back, width: 3/8, setback: 1 from top, depth: 1/8, bit: half}":                          "the half bit is wider than the channel",
		"{groove: a, in: back, width: 1/2, setback: 1 from top, span: 2 to 20 from left, depth: 1/8, bit: half}": "the half bit does not plunge",
		"{groove: a, in: top, width: 1/2, setback: 1/8 from back, depth: 2, bit: half}":                          "the half bit cuts only 1 in",
	} {
		_, err := setup.Make(planFrom(t, shop, "  - piece: board\n    size: "+choiceBoard+"\n    cuts:\n      - "+cut+"\n"))
		assert.ErrorContains(t, err, want)
		assert.ErrorContains(t, err, "name another bit")
	}
}

func TestNoBitWiderThanTheOpening(t *testing.T) {
	const bits = "  bits:\n    - {bit: inch, diameter: 1}\n    - {bit: half, diameter: 1/2}\n"
	const edge = "{rabbet: a, in: back, along: top, width: 3/4, depth: 1/8}"
	assert.Equal(t, "inch", runsOf(t, bits, choiceBoard, edge)[0].Step.Bit.Name)
	assert.Equal(t, "half", runsOf(t, "  opening: 3/4\n"+bits, choiceBoard, edge)[0].Step.Bit.Name)
	_, err := setup.Make(planFrom(t, "  opening: 3/8\n"+bits, "  - piece: board\n    size: "+choiceBoard+"\n    cuts:\n      - "+edge+"\n"))
	assert.ErrorContains(t, err, "table and fence let no bit over 3/8 in turn, and the half bit is wider")
	assert.ErrorContains(t, err, "add a bit of 3/8 in with")
}
