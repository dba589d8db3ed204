package remark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile"
	"fencecard/setup"
)

// A rounded arris takes what its section does, not the block around it: what lies in
// the inner corner of that block meets nothing and is held by what is left.
func TestARoundedArrisIsNoBlock(t *testing.T) {
	for name, c := range map[string]struct{ size, cut, arris, found string }{
		"a groove over it":           {"{left-right: 24, front-back: 6, top-bottom: 3/4}", "groove: g, in: top, width: 1/4, setback: 1/8 from front, depth: 1/4", "bottom front", ""},
		"a groove down to the round": {"{left-right: 24, front-back: 6, top-bottom: 3/4}", "groove: g, in: top, width: 1/4, setback: 1/8 from front, depth: 21/32", "bottom front", "cuts-apart"},
		"a mortise behind it":        {"{left-right: 3/4, front-back: 1 1/2, top-bottom: 24}", "mortise: m, in: left, width: 1/4, setback: 1/4 from front, span: 8 to 10 from top, depth: 5/8", "front right", ""},
		"a mortise that breaks out":  {"{left-right: 3/4, front-back: 1 1/2, top-bottom: 24}", "mortise: m, in: left, width: 1/4, setback: 1/16 from front, span: 8 to 10 from top, depth: 5/8", "front right", "cuts-meet"},
	} {
		t.Run(name, func(t *testing.T) {
			plan, err := planfile.Read("p.yaml", []byte(`unit: in
wood: cherry
shop:
  opening: 3
  bits:
    - {bit: quarter, kind: up-cut, diameter: 1/4, cutting: 1 1/2, shank: 1/4, plunges: yes}
    - {bit: round, kind: round-over, radius: 1/2, pilot: 1/2, diameter: 1 1/2, cutting: 1, shank: 1/2}
pieces:
  - piece: p
    size: `+c.size+`
    cuts:
      - {`+c.cut+`}
      - {profile: arris, on: `+c.arris+`, shape: round-over, radius: 1/2}
`), nil)
			require.NoError(t, err)
			d, err := setup.Make(plan)
			require.NoError(t, err)
			found := ""
			for _, w := range d.Warnings {
				if w.Code == "cuts-apart" || w.Code == "cuts-meet" {
					found += w.Code
				}
			}
			assert.Equal(t, c.found, found)
		})
	}
}
