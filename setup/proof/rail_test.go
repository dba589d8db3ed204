package proof_test

import (
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/require"
)

// railPlan is a rail with a tenon at either end, of two lengths, and a dado.
func railPlan(t *testing.T) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read("rail.yaml", []byte(`title: Rail
unit: in
wood: white ash
pieces:
  - piece: rail
    count: 3
    size: {left-right: 34, front-back: 7/8, top-bottom: 2 1/2}
    cuts:
      - tenon: long
        at: left
        length: 1 1/2
        cheeks: {front: 3/16, back: 3/16, top: 3/8}
      - tenon: short
        at: right
        length: 5/8
        cheeks: 3/16
      - dado: brace
        in: back
        width: 3/4
        setback: 8 from left
        depth: 1/4
`), nil)
	require.NoError(t, err)
	return plan
}

// twoSlots is a short piece with a deep slot, stopped at both ends.
func twoSlots(t *testing.T, shop, more string) *joinery.Plan {
	t.Helper()
	plan, err := planfile.Read("slot.yaml", []byte(`unit: in
shop: {`+shop+`}
pieces:
  - piece: block
    size: {left-right: 14, front-back: 1 3/4, top-bottom: 3}
    cuts:
      - {mortise: slot, in: front, width: 1/2, setback: 1 from bottom, span: 2 to 5 from left, depth: 1`+more+`}
      - {mortise: other, in: front, width: 1/2, setback: 1 from bottom, span: 8 to 12 from left, depth: 1`+more+`}
`), nil)
	require.NoError(t, err)
	return plan
}
