package remark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery/timber"
	"fencecard/setup/internal/workpiece"
)

// Where an earlier rabbet has taken the edge at which a dado comes out, scrap flat
// against the piece backs nothing up: it has to fill the rabbet.
func TestScrapFillsWhatIsGoneAtAnExit(t *testing.T) {
	for _, c := range []struct {
		size, rabbet, after, wood string
		fills                     bool
	}{
		// Left to the fence and top down, the back leads and the front trails.
		{"30 8 3/4", "rabbet edge top front 1/2 3/8", " after edge", "", true},
		{"30 5 3/4", "rabbet edge top front 1/2 3/8", " after edge", "", true}, // guided
		{"30 8 3/4", "rabbet edge top front 1/2 3/8", " after edge", "plywood", true},
		{"30 8 3/4", "rabbet edge top back 1/2 3/8", " after edge", "", false}, // it is fed in there
		{"30 8 3/4", "rabbet edge top front 1/2 3/8", "", "", false},           // the rabbet comes later
		{"30 8 3/4", "rabbet edge top front 1/2 3/8", "", "plywood", false},
	} {
		plan := workpiece.PieceFrom(t, c.size, c.rabbet, "dado shelf top 1/2 6:left - 1/4"+c.after)
		if c.wood != "" {
			plan.Pieces[0].Wood, _, _ = timber.FindWood(c.wood)
		}
		said := ""
		for _, s := range workpiece.DeckOf(t, plan).Setups {
			for _, r := range s.Runs {
				for _, caution := range r.Cautions {
					if r.Cut.Name == "shelf" && (caution.Code == "across-grain" || caution.Code == "guided") {
						said += caution.Brief
					}
				}
			}
		}
		want := "scrap behind where the bit comes out"
		if c.fills {
			want += ", filling the earlier rabbet"
		}
		assert.Contains(t, said, want+".", c)
	}
}
