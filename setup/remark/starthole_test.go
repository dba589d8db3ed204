package remark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup/internal/workpiece"
)

// A mortise of 3/4 in with a bit of 1/2 in takes two fence distances: the centres
// lie 1/4 in from its two walls, and 1/4 in from the line that leads.
func TestStartHolesOfAWideCutAreBoredTogether(t *testing.T) {
	s := situation{"", "30 3 1_1/2", "mortise m bottom 3/4 1_1/4:front 10-14:left 1", func(p *joinery.Plan) {
		b := workpiece.BitOf(workpiece.In(t, "1/2"))
		b.Plunges, b.Shank = joinery.Yes, workpiece.In(t, "1/2")
		p.Shop.Bits, p.Pieces[0].Cuts[0].Bored = []joinery.Bit{b}, true
	}, "", ""}
	var said []string
	for _, u := range s.deck(t).Setups {
		for _, r := range u.Runs {
			for _, c := range r.Cautions {
				if c.Code == "bored-start" {
					said = append(said, c.Brief)
				}
			}
		}
	}
	require.Len(t, said, 2)
	assert.Contains(t, said[0], "Bore both start holes before this setup")
	assert.Regexp(t, `1 1/2 in from the front; .* 1 3/4 in from the front; they overlap, so plug the first`, said[0])
	assert.Contains(t, said[1], "Its start hole was bored before run 1.1")
	assert.NotContains(t, said[1], "Bore")
}
