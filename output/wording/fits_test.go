package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// A channel's width is tried at the last of its runs, by the setups that the deck has: a
// part of it, or a setup of the book, knows only its own.
func TestFitTrialsSayWithWhat(t *testing.T) {
	inch := measure.Inch
	piece := &joinery.Piece{Size: joinery.Size{10 * inch, 10 * inch, 10 * inch}}
	cut := &joinery.Cut{}
	channel := joinery.Channel{Down: joinery.Top, Near: joinery.Front, Setback: inch, Width: inch, Depth: inch / 4, Hi: 10 * inch}
	bit := &joinery.Bit{Diameter: inch / 2}
	run := func(setup, position, of int) deck.Run {
		return deck.Run{Setup: setup, Piece: piece, Cut: cut, Channel: channel,
			Step: deck.Step{Bit: bit, NearEdge: inch, Fence: joinery.Front, Position: position, Of: of}}
	}
	whole := &deck.Deck{Setups: []deck.Setup{
		{Number: 1, Runs: []deck.Run{run(1, 1, 3)}}, {Number: 2, Runs: []deck.Run{run(2, 2, 3)}}, {Number: 3, Runs: []deck.Run{run(3, 3, 3)}},
	}}
	says := func(d *deck.Deck, at int) []FitTrial { return FitTrials(d, &d.Setups[at]) }
	assert.Empty(t, says(whole, 0))
	assert.Empty(t, says(whole, 1), "only the last run gives the width")
	assert.Equal(t, []FitTrial{{"with setups 1 and 2 wide", inch}}, says(whole, 2))
	two := &deck.Deck{Setups: []deck.Setup{{Number: 4, Runs: []deck.Run{run(4, 1, 2)}}, {Number: 5, Runs: []deck.Run{run(5, 2, 2)}}}}
	assert.Equal(t, []FitTrial{{"with setup 4 wide", inch}}, says(two, 1))

	assert.Equal(t, []FitTrial{{"with its other setups wide", inch}}, says(&deck.Deck{Setups: whole.Setups[2:]}, 0), "a part of the deck")
	assert.Equal(t, []FitTrial{{"with its other setup wide", inch}}, says(&deck.Deck{Setups: two.Setups[1:]}, 0))
}
