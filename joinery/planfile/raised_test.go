package planfile_test

import (
	"testing"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// framed is a raised panel in a frame: its edges are the tongues, so the joint says
// none, and the grooves are as wide as they are left.
const framed = `title: Framed panel
unit: in
wood: white oak
shop:
  opening: 3
  bits:
    - {bit: table panel, kind: outline, outline: [[0, 3/8], [1/4, 1]], pilot: 1/2, diameter: 2 1/2, cutting: 1/2, shank: 1/2}
    - {bit: quarter, kind: up-cut, diameter: 1/4, cutting: 1 1/4, shank: 1/2, plunges: yes}
    - {bit: half, kind: straight, diameter: 1/2, cutting: 1 1/4, shank: 1/2}
pieces:
  - piece: left stile
    size: {left-right: 2, front-back: 3/4, top-bottom: 24}
  - piece: right stile
    mirror: {of: left stile, across: left-right}
  - piece: top rail
    size: {left-right: 14, front-back: 3/4, top-bottom: 2}
  - piece: bottom rail
    size: {left-right: 14, front-back: 3/4, top-bottom: 2}
  - piece: panel
    size: {left-right: 14 1/2, front-back: 3/4, top-bottom: 20 3/4}
    grain: top-bottom
    cuts:
      - {panel: raised field, in: front, bit: table panel, leaves: 1/4}
joints:
  - panel: field
    edges: panel / left, right, top, bottom
    into: [left stile / right, right stile / left, top rail / bottom, bottom rail / top]
    place: {front: 1/4 proud}
    depth: 3/8
    room: seasons
`

func TestARaisedPanelNeedsNoTongue(t *testing.T) {
	plan, err := planfile.Read("door.yaml", []byte(framed), nil)
	require.NoError(t, err)
	grooves := 0
	for _, p := range plan.Pieces {
		for _, c := range p.Cuts {
			if p.Name == "panel" {
				assert.Equal(t, "raised field", c.Name, "and no rabbet beside it")
				require.Len(t, c.Channels, 4)
				for _, ch := range c.Channels {
					assert.Equal(t, measure.Inch/2, ch.Depth, "h = T - t")
					assert.Equal(t, measure.Inch, ch.Width)
				}
				continue
			}
			grooves++
			assert.Equal(t, measure.Inch/4, c.Width, "as thick as the edge is left")
			assert.Equal(t, measure.Inch/4, c.Start.Distance)
		}
	}
	assert.Equal(t, 4, grooves)
}
