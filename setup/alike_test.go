package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/setup/internal/workpiece"
)

// Runs that read the same stand together: a long rail, an end rail that stands the
// other way in the work, and its mirror, all pencilled alike. So do legs that are
// one another turned about.
func TestRunsThatReadTheSameStandTogether(t *testing.T) {
	d := workpiece.DeckOf(t, planFrom(t, halfInchBit, `  - piece: long rail
    size: {left-right: 34, front-back: 7/8, top-bottom: 3}
    sides: {front: outside, back: inside, top: edge, left: A, right: B}
    cuts:
      - {groove: buttons, in: back, width: 1/2, setback: 1/2 from top, depth: 1/4}
      - {groove: panel, in: bottom, width: 1/2, setback: 1/4 from front, depth: 1/4}
  - piece: end rail
    size: {left-right: 7/8, front-back: 20, top-bottom: 3}
    sides: {left: outside, right: inside, top: edge, back: A, front: B}
    cuts:
      - {groove: buttons, in: right, width: 1/2, setback: 1/2 from top, depth: 1/4}
  - piece: other end rail
    mirror: {of: end rail, across: left-right}
`))
	require.Len(t, d.Setups, 2)
	s := d.Setups[0]
	if len(s.Runs) < 2 {
		s = d.Setups[1]
	}
	require.Len(t, s.Runs, 3)
	assert.Equal(t, "inside", s.Runs[0].Shown(s.Runs[0].Step.Down))
	assert.Equal(t, "edge", s.Runs[0].Shown(s.Runs[0].Step.Fence))
	assert.Equal(t, s.Runs[0].Orders(), s.Runs[1].Orders())
	assert.Equal(t, "other end rail", s.Runs[2].Piece.Name)
	assert.NotEqual(t, s.Runs[0].Orders(), s.Runs[2].Orders(), "its other end leads")

	legs := workpiece.DeckOf(t, planFrom(t, halfInchBit, `  - piece: front left leg
    size: {left-right: 2, front-back: 2, top-bottom: 20}
    sides: {right: face, front: outside}
    cuts:
      - {mortise: rail, in: right, width: 1/2, setback: 1/2 from front, span: 1 to 3 from top, depth: 1}
  - piece: front right leg
    mirror: {of: front left leg, across: left-right}
  - piece: back right leg
    size: {left-right: 2, front-back: 2, top-bottom: 20}
    sides: {left: face, back: outside}
    cuts:
      - {mortise: rail, in: left, width: 1/2, setback: 1/2 from back, span: 1 to 3 from top, depth: 1}
`))
	require.Len(t, legs.Setups, 1)
	runs := legs.Setups[0].Runs
	require.Len(t, runs, 3)
	assert.Equal(t, "front left leg", runs[0].Piece.Name)
	assert.Equal(t, "back right leg", runs[1].Piece.Name)
	assert.Equal(t, runs[0].Orders(), runs[1].Orders())
	assert.NotEqual(t, runs[0].Orders(), runs[2].Orders())
}
