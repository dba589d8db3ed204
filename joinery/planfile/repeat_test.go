package planfile_test

import (
	"fmt"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/measure"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func rail(cut string) string {
	return "unit: in\npieces:\n  - piece: rail\n    size: {left-right: 36, front-back: 1, top-bottom: 3}\n    cuts:\n" + cut
}

func TestRepeatAlongTheCut(t *testing.T) {
	plan := read(t, "crib.yaml", []byte(rail(`
      - mortise: slat
        in: top
        width: 3/8
        setback: centred
        span: 1 1/2
        depth: 1/2
        note: square them
        repeat: {times: 12, first: 3 from left, every: 2 1/2}
      - groove: last
        in: bottom
        width: 1/4
        setback: 1/4 from front
        depth: 1/4
        after: slat
`)))
	cuts := plan.Pieces[0].Cuts
	require.Len(t, cuts, 13)
	var names []string
	for i, c := range cuts[:12] {
		names = append(names, c.Name)
		assert.Equal(t, fmt.Sprintf("slat %d", i+1), c.Name)
		assert.Equal(t, 3*in+measure.Length(i)*5*in/2, c.Channels[0].Lo)
		assert.Equal(t, 3*in/2, c.Channels[0].Hi-c.Channels[0].Lo)
		assert.Equal(t, "square them", c.Note)
	}
	assert.Equal(t, names, cuts[12].After, "the name stands for all of them")
}

func TestRepeatAcrossTheCut(t *testing.T) {
	plan := read(t, "case.yaml", []byte("unit: in\npieces:\n  - piece: side\n    size: {left-right: 1, front-back: 10, top-bottom: 40}\n    cuts:\n"+`
      - dado: shelf
        in: right
        width: 3/4
        span: 0 to 9 from back
        depth: 1/4
        repeat: {times: 3, first: 4 from bottom, every: 10}
  - piece: other side
    mirror: {of: side, across: left-right}
`))
	for i, at := range []string{"4", "14", "24"} {
		for _, piece := range []string{"side", "other side"} {
			c := cutOf(t, plan, piece, fmt.Sprintf("shelf %d", i+1))
			assert.Equal(t, joinery.Bottom, c.Channels[0].Near)
			assert.Equal(t, at, text(c.Channels[0].Setback), piece)
		}
	}
}

// Evenly spaced: the first and the last where they were put, the others each to
// the nearest division, and told.
func TestRepeatBetween(t *testing.T) {
	plan := read(t, "crib.yaml", []byte(rail(`
      - mortise: slat
        in: top
        width: 3/8
        setback: centred
        span: 1 1/2
        depth: 1/2
        repeat: {times: 12, between: 3 and 31 from left}
`)))
	cuts := plan.Pieces[0].Cuts
	require.Len(t, cuts, 12)
	for i, c := range cuts {
		exact := 3 + 28*float64(i)/11
		assert.InDelta(t, exact, c.Channels[0].Lo.Inches(), 1.0/128)
		assert.True(t, measure.InchScale.On(c.Channels[0].Lo))
		assert.Equal(t, "evenly spaced, each to the nearest 1/64 in", c.Note)
	}
	assert.Equal(t, 3*in, cuts[0].Channels[0].Lo)
	assert.Equal(t, 31*in, cuts[11].Channels[0].Lo)
	plain := read(t, "crib.yaml", []byte(rail(`      - {mortise: slat, in: top, width: 3/8, setback: centred, span: 1 1/2, depth: 1/2, repeat: {times: 8, between: 3 and 31 from left}}
`)))
	assert.Empty(t, plain.Pieces[0].Cuts[3].Note, "4 in apart, nothing rounded")
}

// Slats of a crib from one joint: the rails get twelve mortises each, the slat
// one tenon at either end.
func TestRepeatInAJoint(t *testing.T) {
	plan := read(t, "crib.yaml", []byte(`unit: in
wood: hard maple
pieces:
  - {piece: bottom rail, size: {left-right: 36, front-back: 1, top-bottom: 3}}
  - {piece: top rail, mirror: {of: bottom rail, across: top-bottom}}
  - {piece: slat, count: 12, size: {left-right: 1 1/2, front-back: 1/2, top-bottom: 20 between shoulders}}
joints:
  - mortise and tenon: slat
    tenon: slat / bottom, top
    into: bottom rail / top, top rail / bottom
    place: {centred: front-back}
    repeat: {times: 12, first: 3 from left, every: 2 1/2}
    thickness: 1/4
    length: 1/2
`))
	assert.Equal(t, "21", text(plan.Piece("slat").Size[2]))
	assert.Equal(t, []string{"slat bottom", "slat top"}, cutNames(plan.Piece("slat")))
	for _, name := range []string{"bottom rail", "top rail"} {
		p := plan.Piece(name)
		require.Len(t, p.Cuts, 12)
		for i, c := range p.Cuts {
			assert.Equal(t, fmt.Sprintf("slat %d", i+1), c.Name)
			assert.Equal(t, 3*in+measure.Length(i)*5*in/2, c.Channels[0].Lo, "the slat's left side")
			assert.Equal(t, "slat", c.Mates.Piece)
		}
	}
	assert.Equal(t, "slat bottom", plan.Piece("bottom rail").Cuts[7].Mates.Cut)
}
