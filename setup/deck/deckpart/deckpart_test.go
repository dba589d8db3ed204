package deckpart_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/deck/deckpart"
	"fencecard/setup/internal/workpiece"
)

func TestOnlyKeepsTheNumbersOfTheFullDeck(t *testing.T) {
	full, err := setup.Make(workpiece.Legs(t))
	require.NoError(t, err)
	full.Warnings = []deck.Warning{{Code: "a", Piece: "left leg"}, {Code: "b", Piece: "right leg"}, {Code: "c"}}

	for _, only := range []deckpart.Only{
		{},
		{Pieces: []string{"RIGHT leg "}},
		{Pieces: []string{"left leg"}},
		{Setups: []int{2}},
		{Pieces: []string{"left leg", "right leg"}, Setups: []int{1}},
	} {
		part, err := deckpart.Of(full, only)
		require.NoError(t, err)
		byNumber := map[string]deck.Run{}
		for _, s := range full.Setups {
			for _, r := range s.Runs {
				byNumber[r.Number()] = r
			}
		}
		for _, s := range part.Setups {
			rungs := map[measure.Length]bool{}
			for _, r := range s.Runs {
				was := byNumber[r.Number()]
				assert.Equal(t, was.Cut, r.Cut)
				assert.Equal(t, was.Piece.Name, r.Piece.Name)
				assert.Equal(t, was.Heights, r.Heights)
				for _, h := range r.Heights {
					rungs[h] = true
				}
			}
			assert.Len(t, s.Heights, len(rungs), "a rung that no card uses is not climbed")
		}
		want := deck.Count(part.Setups, &part.Plan.Shop)
		if len(only.Pieces)+len(only.Setups) == 0 {
			want = full.Changes // what was proved of the whole stands
		}
		assert.Equal(t, want, part.Changes)
	}
}

func TestOnlyOnePiece(t *testing.T) {
	full, err := setup.Make(workpiece.Legs(t))
	require.NoError(t, err)
	full.Warnings = []deck.Warning{{Code: "a", Piece: "left leg"}, {Code: "b", Piece: "right leg"}, {Code: "c"}}
	require.Len(t, full.Setups, 2)
	require.Equal(t, 4, full.Runs())

	part, err := deckpart.Of(full, deckpart.Only{Pieces: []string{"right leg"}})
	require.NoError(t, err)
	require.Len(t, part.Setups, 1)
	assert.Equal(t, 1, part.Runs())
	assert.Len(t, part.Plan.Pieces, 1)
	assert.Same(t, &part.Plan.Pieces[0], part.Setups[0].Runs[0].Piece)
	assert.Equal(t, []deck.Warning{{Code: "b", Piece: "right leg"}, {Code: "c"}}, part.Warnings)
	assert.Equal(t, 1, part.Changes.Bits)
	assert.Equal(t, 4, full.Runs(), "the full deck stays as it is")
	assert.Len(t, full.Plan.Pieces, 2)
}

func TestOnlyRefuses(t *testing.T) {
	full, err := setup.Make(workpiece.Legs(t))
	require.NoError(t, err)
	_, err = deckpart.Of(full, deckpart.Only{Pieces: []string{"left lag"}, Setups: []int{9}})
	assert.ErrorContains(t, err, `no piece "left lag"`)
	assert.ErrorContains(t, err, `"left leg", "right leg"`)
	assert.ErrorContains(t, err, "no setup 9")
	assert.ErrorContains(t, err, "1 to 2")
	_, err = deckpart.Of(full, deckpart.Only{Pieces: []string{"right leg"}, Setups: []int{2}})
	assert.ErrorContains(t, err, `no run of "right leg" is run at setup 2`)
}
