package wording_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/wording"
)

func TestAtTheTable(t *testing.T) {
	for said, want := range map[string]string{
		`a saw is quicker (write by: saw) (likewise "right" of "rail", line 67)`:                          `a saw is quicker (likewise "right" of "rail")`,
		`a saw is quicker (leave the top out of its cheeks, and add a lap there with by: saw)`:            `a saw is quicker`,
		`leave the blank long at the top, or write start: hole and bore it first`:                         `leave the blank long at the top, or bore a start hole first`,
		`round the corners over, or write ends: square and chisel the ends (and 3 mirrored)`:              `round the corners over, or chisel the ends square (and 3 mirrored)`,
		`write fence: either, so that the left may go to the fence`:                                       `in the plan write fence: either, so that the left may go to the fence`,
		`10 3/4 in is the longest side, under 12 in: cut the joints in a longer blank, line it up by eye`: `10 3/4 in is the longest side, under 12 in: cut the joints in a longer blank, line it up by eye`,
	} {
		assert.Equal(t, want, wording.AtTheTable(said))
	}
}
