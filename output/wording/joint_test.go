package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Where a part lies is said in the plan's number, and how far its play lets it move.
func TestWhereAPartLies(t *testing.T) {
	const eighth, hair = measure.Inch / 8, measure.Inch / 500
	lies := func(near, far deck.Reveal) string {
		j := &deck.Joint{
			Into: deck.Half{Piece: &joinery.Piece{Name: "leg"}, Cut: &joinery.Cut{Kind: &joinery.Mortise}},
			Part: deck.Half{Piece: &joinery.Piece{Name: "rail"}}, Reveals: []deck.Reveal{near, far},
		}
		return Joined(j, measure.Scale{Unit: measure.Inches, Division: measure.Inch / 64})[1]
	}
	front := deck.Reveal{Side: joinery.Front, Distance: eighth}
	back := deck.Reveal{Side: joinery.Back, Distance: 5 * eighth}
	assert.Equal(t, "The rail lies 1/8 back from the front, 5/8 forward from the back.", lies(front, back))
	front.Play = hair
	assert.Equal(t, "The rail lies 1/8 back from the front (0.002 of play to the front), 5/8 forward from the back.", lies(front, back))
	back.Play = hair
	assert.Equal(t, "The rail lies 1/8 back from the front (0.002 of play either way), 5/8 forward from the back.", lies(front, back))
}
