package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// legsPlan is a pair of mirrored legs, two of each, with a mortise 1 deep and
// a groove 1/4 deep that share a bit and a fence distance, and a dado of their
// left legs alone.
func legsPlan(t *testing.T) *joinery.Plan {
	t.Helper()
	scale := measure.InchScale
	left := joinery.Piece{
		Name: "left leg", Count: 2, Grain: joinery.TopBottom,
		Size: joinery.Size{13 * measure.Inch / 8, 13 * measure.Inch / 8, 17 * measure.Inch},
		Cuts: []joinery.Cut{
			{Kind: &joinery.Mortise, Name: "seat rail", In: joinery.Right, Width: 3 * measure.Inch / 8, Depth: measure.Inch,
				Start: joinery.Setback{Distance: measure.Inch / 2, From: joinery.Front},
				Span:  joinery.Span{From: measure.Inch / 2, To: 3 * measure.Inch, Side: joinery.Top}},
		},
	}
	require.Empty(t, left.LayAll(scale))
	right := left.Mirrored("right leg", joinery.LeftRight, scale)
	left.Cuts = append(left.Cuts,
		joinery.Cut{Kind: &joinery.Groove, Name: "panel", In: joinery.Back, Width: 3 * measure.Inch / 8, Depth: measure.Inch / 8,
			Start: joinery.Setback{Distance: measure.Inch / 2, From: joinery.Left}},
		joinery.Cut{Kind: &joinery.Dado, Name: "shelf", In: joinery.Right, Width: 3 * measure.Inch / 4, Depth: measure.Inch / 4,
			Start: joinery.Setback{Distance: 4 * measure.Inch, From: joinery.Bottom}})
	require.Empty(t, left.LayAll(scale))
	return &joinery.Plan{
		Title: "Legs", Pieces: []joinery.Piece{left, right},
		Shop: joinery.Shop{Scale: scale,
			Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2},
			Bits: []joinery.Bit{
				{Name: "three eighths", Diameter: 3 * measure.Inch / 8, Plunges: joinery.Yes},
				{Name: "three quarters", Diameter: 3 * measure.Inch / 4, Plunges: joinery.Yes},
			}},
	}
}

func TestBatchMultipliesCounts(t *testing.T) {
	plan := legsPlan(t)
	batch, err := setup.Batch(plan, 12)
	require.NoError(t, err)
	assert.Equal(t, 24, batch.Pieces[0].Count)
	assert.Equal(t, 24, batch.Pieces[1].Count)
	assert.Equal(t, 2, plan.Pieces[0].Count, "the plan itself stays as it is")

	one, err := setup.Make(plan)
	require.NoError(t, err)
	twelve, err := setup.Make(batch)
	require.NoError(t, err)
	want, got := one.Changes, twelve.Changes
	assert.Equal(t, 12*want.Runs, got.Runs)
	want.Runs, want.Time, want.Bound = got.Runs, got.Time, got.Bound
	assert.Equal(t, want, got, "a batch is run through the same setups")
	require.Equal(t, one.Runs(), twelve.Runs())
	for i, s := range twelve.Setups {
		for k, r := range s.Runs {
			assert.Equal(t, 12*one.Setups[i].Runs[k].Piece.Count, r.Piece.Count)
		}
	}
}

func TestBatchRefuses(t *testing.T) {
	for _, n := range []int{0, -1, 50_001, 1 << 62} {
		_, err := setup.Batch(legsPlan(t), n)
		assert.ErrorContains(t, err, "batch of", n)
	}
}

func TestOnlyKeepsTheNumbersOfTheFullDeck(t *testing.T) {
	full, err := setup.Make(legsPlan(t))
	require.NoError(t, err)
	full.Warnings = []deck.Warning{{Code: "a", Piece: "left leg"}, {Code: "b", Piece: "right leg"}, {Code: "c"}}

	for _, only := range []deck.Only{
		{},
		{Pieces: []string{"RIGHT leg "}},
		{Pieces: []string{"left leg"}},
		{Setups: []int{2}},
		{Pieces: []string{"left leg", "right leg"}, Setups: []int{1}},
	} {
		part, err := full.Only(only)
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
	full, err := setup.Make(legsPlan(t))
	require.NoError(t, err)
	full.Warnings = []deck.Warning{{Code: "a", Piece: "left leg"}, {Code: "b", Piece: "right leg"}, {Code: "c"}}
	require.Len(t, full.Setups, 2)
	require.Equal(t, 4, full.Runs())

	part, err := full.Only(deck.Only{Pieces: []string{"right leg"}})
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
	full, err := setup.Make(legsPlan(t))
	require.NoError(t, err)
	_, err = full.Only(deck.Only{Pieces: []string{"left lag"}, Setups: []int{9}})
	assert.ErrorContains(t, err, `no piece "left lag"`)
	assert.ErrorContains(t, err, `"left leg", "right leg"`)
	assert.ErrorContains(t, err, "no setup 9")
	assert.ErrorContains(t, err, "1 to 2")
	_, err = full.Only(deck.Only{Pieces: []string{"right leg"}, Setups: []int{2}})
	assert.ErrorContains(t, err, `no run of "right leg" is run at setup 2`)
}
