package joints_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup/internal/workpiece"
)

// raisedDoor is a panel raised to 1/4 in that stands in the groove of a stile; grain
// up, it moves across.
const raisedDoor = `title: Door
unit: in
wood: white oak
shop:
  opening: 3
  bits:
    - {bit: quarter, kind: straight, diameter: 1/4, cutting: 1, shank: 1/4}
    - {bit: table panel, kind: outline, outline: [[0, 3/8], [1/4, 1]], pilot: 1/2, diameter: 2 1/2, cutting: 5/8, shank: 1/2}
pieces:
  - piece: stile
    size: {left-right: 2, front-back: 7/8, top-bottom: 24}
    cuts:
      - {groove: panel, in: right, width: 1/4, setback: 9/16 from front, depth: 3/8, mates: panel / field}
  - piece: panel
    size: {left-right: 12, front-back: 3/4, top-bottom: 20}
    grain: top-bottom
    cuts:
      - {panel: field, in: front, bit: table panel, leaves: 1/4}
`

// A raised panel is held against the groove that it names, or that names it: as thick
// as the groove is wide, thin as far as it goes in, and never out of it.
func TestARaisedPanelAndItsGroove(t *testing.T) {
	for _, c := range []struct {
		name    string
		instead []string
		code    string // "" for none
		says    string
	}{
		{"sound", nil, "", ""},
		{"named by the panel", []string{", mates: panel / field", "", "leaves: 1/4", "leaves: 1/4, mates: stile / panel"}, "", ""},
		{"a hair thinner", []string{"leaves: 1/4", "leaves: 0.236"}, "", ""},
		{"loose", []string{"leaves: 1/4", "leaves: 7/32"}, "part-loose", `panel "field" leaves the edges of "panel" 7/32 in thick, which is loose: groove "panel" of "stile" is 1/4 in wide; write leaves: 1/4`},
		// Of 12 in of white oak 0.254 in move (12 x 0.00365 x 5.8); half of it is room.
		{"as deep as the flat and its room", []string{"depth: 3/8", "depth: 1/2"}, "", ""},
		{"deeper", []string{"depth: 3/8", "depth: 33/64"}, "panel-edge-short", "is thin only for 3/8 in: make it 1/2 in deep"},
		{"along the grain there is no room", []string{"grain: top-bottom", "grain: left-right", "depth: 3/8", "depth: 25/64"}, "panel-edge-short", "make it 3/8 in deep"},
		{"shallow", []string{"depth: 3/8", "depth: 1/4"}, "panel-comes-out", "is only 1/4 in deep"},
	} {
		plan, err := planfile.Read("door.yaml", []byte(strings.NewReplacer(c.instead...).Replace(raisedDoor)), nil)
		require.NoError(t, err, c.name)
		codes, text := jointWarnings(workpiece.DeckOf(t, plan))
		if c.code == "" {
			assert.Empty(t, codes, "%s: %s", c.name, text)
			continue
		}
		assert.Equal(t, []string{c.code}, codes, c.name)
		assert.Contains(t, text, c.says, c.name)
	}
}

// A panel that is written as a joint goes in by that: nothing is to be written for it.
func TestAPanelOfAJoint(t *testing.T) {
	plan, err := planfile.Read("door.yaml", []byte(`unit: in
wood: cherry
shop: {bits: [{bit: quarter, kind: up-cut, diameter: 1/4, cutting: 1, shank: 1/4, plunges: yes}]}
pieces:
  - {piece: stile, size: {left-right: 2, front-back: 3/4, top-bottom: 20}}
  - {piece: other stile, mirror: {of: stile, across: left-right}}
  - {piece: panel, size: {left-right: 9 1/4, front-back: 1/4, top-bottom: 12}, grain: top-bottom}
joints:
  - {panel: panel, edges: [panel / left], into: [stile / right], place: {centred: front-back}, depth: 3/8}
`), nil)
	require.NoError(t, err)
	require.Len(t, plan.Pieces[1].Cuts, 1)
	for _, w := range workpiece.DeckOf(t, plan).Warnings {
		assert.NotEqual(t, "not-joined", w.Code, w.Text)
	}
}
