package joints_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// The doors' panel stands in grooves of its name that no joint is made of; the
// nightstand's grooves have the names of no piece.
func TestAPanelThatIsJoinedToNothingIsTold(t *testing.T) {
	told := func(name string) []string {
		var pieces []string
		for _, w := range workpiece.DeckOf(t, workpiece.RealPlans(t)[name]).Warnings {
			if w.Code == "not-joined" {
				pieces = append(pieces, w.Piece)
			}
		}
		return pieces
	}
	assert.Equal(t, []string{"panel"}, told("panel-door"))
	assert.Empty(t, told("nightstand"))
	assert.Empty(t, told("wall-shelf"), "its bottom is housed, and the grooves are of drawers")
	plan := workpiece.RealPlans(t)["panel-door"]
	for i := range plan.Pieces {
		for k := range plan.Pieces[i].Cuts {
			if c := &plan.Pieces[i].Cuts[k]; c.Name == "panel" {
				c.Mates.Piece = "panel"
			}
		}
	}
	joined := workpiece.DeckOf(t, plan).Warnings
	assert.False(t, slices.ContainsFunc(joined, func(w deck.Warning) bool { return w.Code == "not-joined" }), "joined")
}
