package planfile_test

import (
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const endRail = `  - piece: end rail
    count: 2
    size: {left-right: 7/8, front-back: 11 1/2 between shoulders, top-bottom: 3 1/2}
`

// One place names all four where the legs are mirrors: the rail's other end by
// one mirror, a second rail by the other.
func TestMirrorsMirrorJoints(t *testing.T) {
	joint := func(ends, into string) string {
		return four + endRail + "joints:\n  - mortise and tenon: end rail\n    tenon: " + ends + "\n    into: " + into +
			"\n    place: {top: flush, left: 1/8 right}\n    thickness: 3/8\n    length: 3/4\n"
	}
	var first *joinery.Plan
	for _, words := range [][2]string{
		{"end rail / front", "front left leg / back"},
		{"end rail / front, back", "front left leg / back, back left leg / front"},
		{"end rail / back, front", "back left leg / front, front left leg / back"},
	} {
		plan := read(t, "bench.yaml", []byte(joint(words[0], words[1])))
		assert.Equal(t, "13", text(plan.Piece("end rail").Size[1]))
		for _, leg := range []string{"front left leg", "front right leg", "back left leg", "back right leg"} {
			require.Len(t, plan.Piece(leg).Cuts, 1, "%s by %v", leg, words)
		}
		assert.Len(t, plan.Piece("end rail").Cuts, 2)
		if first != nil {
			for i := range plan.Pieces {
				assert.ElementsMatch(t, channelsOf(&first.Pieces[i]), channelsOf(&plan.Pieces[i]), "%s by %v", plan.Pieces[i].Name, words)
			}
		}
		first = plan
	}
}

func channelsOf(p *joinery.Piece) []string {
	var all []string
	for i := range p.Cuts {
		all = append(all, boxOf(&p.Cuts[i]))
	}
	return all
}

// A second end rail with a groove on its inner face is the first one turned
// about, if that is the same from end to end; else it must be written.
func TestLikePieces(t *testing.T) {
	groove := func(span string) string {
		return strings.Replace(four+endRail, "top-bottom: 3 1/2}\n", "top-bottom: 3 1/2}\n    cuts:\n      - {groove: runner, in: right, width: 3/8, setback: 1 from bottom, depth: 1/4"+span+"}\n", 1) +
			"joints:\n  - mortise and tenon: end rail\n    tenon: end rail / front\n    into: front left leg / back\n    place: {top: flush, left: 1/8 right}\n    thickness: 3/8\n    length: 3/4\n"
	}
	read(t, "bench.yaml", []byte(groove(", span: 2 to 11 from front")))
	_, err := planfile.Read("bench.yaml", []byte(groove(", span: 2 to 6 from front")), nil)
	require.ErrorContains(t, err, "mirror: {of: end rail, across: left-right}")
	split := strings.Replace(groove(", span: 2 to 6 from front"), "count: 2", "count: 1", 1)
	split = strings.Replace(split, "joints:", "  - {piece: right end rail, mirror: {of: end rail, across: left-right}}\njoints:", 1)
	plan := read(t, "bench.yaml", []byte(split))
	assert.Len(t, plan.Piece("right end rail").Cuts, 3)
}

// Two joints may name a rail and its mirror: the second agrees with what the
// mirror has made and makes nothing twice.
func TestJointAgreesWithAMirroredOne(t *testing.T) {
	plan := read(t, "door.yaml", []byte(`unit: in
pieces:
  - {piece: stile, size: {left-right: 2, front-back: 3/4, top-bottom: 30}}
  - {piece: other stile, mirror: {of: stile, across: left-right}}
  - {piece: top rail, size: {left-right: 12 between shoulders, front-back: 3/4, top-bottom: 3}}
  - {piece: bottom rail, mirror: {of: top rail, across: top-bottom}}
joints:
  - {mortise and tenon: top, tenon: top rail / left, into: stile / right, place: {top: flush, front: flush}, thickness: 1/4, shoulders: {top: 1/2}, length: 1}
  - {mortise and tenon: bottom, tenon: bottom rail / left, into: stile / right, place: {bottom: flush, front: flush}, thickness: 1/4, shoulders: {bottom: 1/2}, length: 1}
`))
	assert.Equal(t, []string{"top left", "top right"}, cutNames(plan.Piece("top rail")))
	assert.Equal(t, []string{"top left", "top right"}, cutNames(plan.Piece("bottom rail")))
	assert.Equal(t, []string{"top", "bottom"}, cutNames(plan.Piece("stile")))
	assert.Equal(t, joinery.Mate{Piece: "bottom rail", Cut: "top left"}, cutOf(t, plan, "stile", "bottom").Mates)
}

// A shelf that goes on past its legs enters two of them with each end, and is
// notched at both its edges.
func TestShelfThroughFourLegs(t *testing.T) {
	for _, into := range []string{"front left leg / right", "front left leg / right, front right leg / left"} {
		plan := read(t, "bench.yaml", []byte(four+"  - {piece: shelf, size: {left-right: 32 between shoulders, front-back: 15, top-bottom: 9/16}}\njoints:\n"+
			"  - {housing: shelf, board: [shelf / left, right], into: ["+into+"], place: {bottom: 4 up, front: flush}, depth: 1/4, stopped: 3/8 from front}\n"))
		assert.Equal(t, "32 1/2", text(plan.Piece("shelf").Size[0]))
		assert.Len(t, plan.Piece("back right leg").Cuts, 1)
		assert.ElementsMatch(t, []string{
			"front left+0 wide 1/4 deep 3/8 from 0 to 9/16", "front right+0 wide 1/4 deep 3/8 from 0 to 9/16",
			"back left+0 wide 1/4 deep 3/8 from 0 to 9/16", "back right+0 wide 1/4 deep 3/8 from 0 to 9/16",
		}, channelsOf(plan.Piece("shelf")), into)
	}
}

// Own cuts wait for the cuts of joints by their names, and joints for own cuts.
func TestAfterAcrossJoints(t *testing.T) {
	text := strings.Replace(four+frontRail+"joints:"+seatRail, "left-right: 32 1/2 between shoulders, front-back: 7/8, top-bottom: 3 1/2}\n",
		"left-right: 32 1/2 between shoulders, front-back: 7/8, top-bottom: 3 1/2}\n    cuts:\n      - {groove: buttons, in: back, width: 1/4, setback: 1/2 from top, depth: 3/8, after: seat rail}\n", 1)
	text = strings.Replace(text, "top-bottom: 17}\n", "top-bottom: 17}\n    cuts:\n      - {dado: shelf, in: right, width: 1/2, setback: 4 from bottom, depth: 1/4}\n", 1)
	text = strings.Replace(text, "    ends: square\n", "    ends: square\n    after: shelf\n    note: test in scrap\n    bit: three eighths up-cut\n    start: hole\n", 1)
	plan := read(t, "bench.yaml", []byte(text))
	assert.Equal(t, []string{"seat rail left", "seat rail right"}, cutOf(t, plan, "front seat rail", "buttons").After)
	mortise := cutOf(t, plan, "front left leg", "seat rail")
	assert.Equal(t, []string{"shelf"}, mortise.After)
	assert.Equal(t, "test in scrap", mortise.Note)
	assert.Equal(t, "three eighths up-cut", mortise.Bit)
	assert.True(t, mortise.Bored)
	assert.Equal(t, "three eighths up-cut", cutOf(t, plan, "back right leg", "seat rail").Bit)
	assert.Empty(t, cutOf(t, plan, "front seat rail", "seat rail left").Bit, "for the receiving half alone")
	assert.Contains(t, expanded(t, text), "        bit: three eighths up-cut\n        start: hole\n")
	_, err := planfile.Read("bench.yaml", []byte(strings.Replace(text, "depth: 1/4}", "depth: 1/4, after: seat rail}", 1)), nil)
	require.ErrorContains(t, err, "the cuts wait for each other in a circle")
}
