package remark_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/remark"
)

func TestWarnedOnce(t *testing.T) {
	at := plantext.Place{File: "p", Line: 3}
	d := &deck.Deck{
		Plan: &joinery.Plan{Pieces: []joinery.Piece{{Name: "leg"}, {Name: "left", MirrorOf: "leg"}, {Name: "back", MirrorOf: "leg"}, {Name: "rail"}}},
		Warnings: []deck.Warning{
			{Code: "thin-wall", Piece: "leg", Cut: "m", Text: "leg: thin", Place: at},
			{Code: "thin-wall", Piece: "leg", Cut: "m", Text: "leg: thin too", Place: at},
			{Code: "thin-wall", Piece: "left", Cut: "m", Text: "left: thin", Place: at},
			{Code: "thin-wall", Piece: "left", Cut: "m", Text: "left: thin too", Place: at},
			{Code: "thin-wall", Piece: "back", Cut: "m", Text: "back: thin", Place: at},
			{Code: "thin-wall", Piece: "rail", Cut: "m", Text: "rail: thin", Place: at},
			{Code: "steep-drop", Piece: "leg", Cut: "m", Text: "leg: tilted 5 degrees", Place: at},
			{Code: "steep-drop", Piece: "left", Cut: "m", Text: "left: tilted 13 degrees", Place: at}, // its other end leads
			{Code: "narrow-bearing", Piece: "leg", Cut: "m", Text: "leg: 5 of the front rides: against the stop", Place: at},
			{Code: "narrow-bearing", Piece: "back", Cut: "m", Text: "back: 5 of the back rides: against the stop", Place: at},
			{Code: "narrow-bearing", Piece: "left", Cut: "m", Text: "left: 5 of the front rides: with a block", Place: at}, // fed in at its other end
			{Code: "short-end", Piece: "left", Cut: "m", Text: "left: short", Place: at},
			{Code: "plan", Text: "of the plan"},
			{Code: "plan", Text: "of the plan again"},
		},
	}
	var said []string
	for _, w := range remark.Once(d) {
		said = append(said, w.Text)
	}
	assert.Equal(t, []string{"leg: thin (and 2 mirrored)", "leg: thin too (and 1 mirrored)", "rail: thin", "leg: tilted 5 degrees", "left: tilted 13 degrees", "leg: 5 of the front rides: against the stop (and 1 mirrored)", "left: 5 of the front rides: with a block", "left: short", "of the plan", "of the plan again"}, said)
	assert.Equal(t, "leg: thin", d.Warnings[0].Text, "the deck's own warnings stay")
}

func TestACauseIsSaidOnce(t *testing.T) {
	plan := workpiece.PieceFrom(t, "20 2 1_1/2", "mortise a top 1/4 1/8:front 2-4:left 1/2", "mortise b bottom 1/4 1/8:front 8-10:left 1/2",
		"mortise c top 1/4 3/16:front 14-16:left 1/2")
	d := workpiece.DeckOf(t, plan)
	var said []string
	for _, w := range remark.Once(d) {
		if w.Code == "thin-wall" {
			said = append(said, w.Text)
		}
	}
	require.Len(t, said, 2, "other figures are another cause")
	assert.Contains(t, said[0], `(likewise "b" of "piece")`)
	assert.NotContains(t, said[1], "likewise")
	many := deck.Deck{Plan: plan}
	for _, name := range "abcdefghijkl" {
		many.Warnings = append(many.Warnings, deck.Warning{Code: "x", Piece: string(name), Text: string(name) + ": thin"})
	}
	once := remark.Once(&many)
	require.Len(t, once, 1)
	assert.Contains(t, once[0].Text, `a: thin (likewise "b"; "c"`)
	assert.Contains(t, once[0].Text, `; and 3 more)`)
}
