package setup_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
)

// in reads a length in inches, mm one in millimetres.
func in(t testing.TB, text string) joinery.Length { return length(t, text, joinery.Inches) }

func mm(t testing.TB, text string) joinery.Length { return length(t, text, joinery.Millimetres) }

// length reads a length that may be negative, as fence distances are.
func length(t testing.TB, text string, unit joinery.Unit) joinery.Length {
	t.Helper()
	sign := joinery.Length(1)
	if text[0] == '-' {
		sign, text = -1, text[1:]
	}
	l, err := joinery.ParseLength(text, unit)
	require.NoError(t, err)
	return sign * l
}

// planOf lays one piece on a bench with the bits given.
func planOf(t testing.TB, unit joinery.Unit, size joinery.Size, cut joinery.Cut, bits ...joinery.Bit) *joinery.Plan {
	t.Helper()
	p := joinery.Piece{Name: "piece", Count: 1, Size: size, Grain: longest(size), Cuts: []joinery.Cut{cut}, Wood: joinery.Wood{Name: "wood"}}
	scale := joinery.DefaultScale(unit)
	require.Empty(t, p.LayAll(scale))
	return &joinery.Plan{
		Name: "plan", Unit: unit, Pieces: []joinery.Piece{p},
		Shop: joinery.Shop{Scale: scale, Bits: bits, Rules: joinery.DefaultRules(unit),
			Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2}},
	}
}

func longest(size joinery.Size) joinery.Dimension {
	d := joinery.LeftRight
	for _, other := range joinery.Dimensions {
		if size[other] > size[d] {
			d = other
		}
	}
	return d
}

// deckOf makes the deck of a plan.
func deckOf(t testing.TB, plan *joinery.Plan) *setup.Deck {
	t.Helper()
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return d
}

// bitOf is a plunging straight bit named after its diameter.
func bitOf(diameter joinery.Length) joinery.Bit {
	return joinery.Bit{Name: diameter.String(), Diameter: diameter, Plunges: joinery.Yes}
}

// inches reads lengths in inches.
func inches(t testing.TB, texts ...string) []joinery.Length {
	var ls []joinery.Length
	for _, text := range texts {
		ls = append(ls, in(t, text))
	}
	return ls
}
