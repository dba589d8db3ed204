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
	said := boredFor(t, "3/4")
	require.Len(t, said, 2)
	assert.Contains(t, said[0], "Bore both start holes before this setup")
	assert.Regexp(t, `1 1/2 in from the front; .* 1 3/4 in from the front; they overlap: plug the first`, said[0])
	assert.Contains(t, said[1], "Its start hole was bored before run 1.1")
	assert.NotContains(t, said[1], "Bore")
}

// Holes that no awl tells apart are one, as wide as the cut, so that the bit of either
// run goes into it: its centre is that of the mortise, 1 1/4 in and half of its width
// from the front (worked out).
func TestStartHolesAHairApartAreOne(t *testing.T) {
	said := boredFor(t, "0.504")
	require.Len(t, said, 2)
	assert.Contains(t, said[0], "Bore one start hole before this setup, for run 2.1 too, as wide and as deep as the cut, its centre 16 1/4 in from the right and 1.502 in from the front.")
	assert.Contains(t, said[1], "Its start hole is that of run 1.1.")
	assert.Len(t, boredFor(t, "1/2"), 1)
}

// boredFor is what is said of start holes at the runs of a mortise so wide, cut with a
// bit of 1/2 in.
func boredFor(t *testing.T, wide string) (said []string) {
	t.Helper()
	s := situation{"", "30 3 1_1/2", "mortise m bottom " + wide + " 1_1/4:front 10-14:left 1", func(p *joinery.Plan) {
		b := workpiece.BitOf(workpiece.In(t, "1/2"))
		b.Plunges, b.Shank = joinery.Yes, workpiece.In(t, "1/2")
		p.Shop.Bits, p.Pieces[0].Cuts[0].Bored = []joinery.Bit{b}, true
	}, "", ""}
	for _, u := range s.deck(t).Setups {
		for _, r := range u.Runs {
			for _, c := range r.Cautions {
				if c.Code == "bored-start" {
					said = append(said, c.Brief)
				}
			}
		}
	}
	return said
}
