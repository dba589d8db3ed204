package attable_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/proof/attable"
)

// corrected says what a test cut of a piece's run teaches, in the leg and rail of the
// other tests.
func corrected(t *testing.T, piece string, cut attable.TestCut) (attable.Lesson, error) {
	t.Helper()
	plan, err := planfile.Read("leg.yaml", []byte(strings.Replace(legAndRail, "SHOP", "fence: {infeed: 20, outfeed: 20, reach: 12}", 1)), nil)
	require.NoError(t, err)
	claims := claimsOf(t, plan)
	for _, u := range claims.Setups {
		for _, r := range u.Runs {
			if r.Piece == piece {
				return attable.Correct(plan, &claims, r.Number, cut)
			}
		}
	}
	t.Fatal("no run of " + piece)
	return attable.Lesson{}, nil
}

// The leg's mortise lies 1/2 from the front, 3/8 wide and 1 deep, from 1/2 to 3 below the
// top, which leads; the rail's tenon is 1 1/2 long.
func TestWhatATestCutTeaches(t *testing.T) {
	in := func(text string) measure.Length { return workpiece.In(t, text) }
	for _, c := range []struct {
		piece     string
		cut       attable.TestCut
		move, ask string
	}{
		{"leg", attable.TestCut{Setback: in("1/2")}, "", ""},
		{"leg", attable.TestCut{Setback: in("31/64")}, "move the fence 1/64 away from the bit", ""},
		{"leg", attable.TestCut{Setback: in("7/8")}, "move the fence 3/8 toward the bit", "7/8 would be right from the front to the far wall."},
		{"leg", attable.TestCut{Setback: in("1/8")}, "move the fence 3/8 away from the bit", "Was the fence set to the bit's far edge?"},
		{"leg", attable.TestCut{Width: in("3/8")}, "", ""},
		{"leg", attable.TestCut{Width: in("0.373")}, `write measured: 0.373 in for the bit "three eighths"`, ""},
		{"leg", attable.TestCut{Begins: in("17/32")}, "move the start mark 1/32 to the right", ""},
		{"leg", attable.TestCut{Begins: in("3")}, "move the start mark 2 1/2 to the right", "to where the cut ends. Did you measure that?"},
		{"leg", attable.TestCut{Length: in("2 15/32")}, "move the stop mark 1/32 to the left", ""},
		{"leg", attable.TestCut{Length: in("2 1/8")}, "move the stop mark 3/8 to the left", "without the round ends"},
		{"leg", attable.TestCut{Depth: in("63/64")}, "raise the bit 1/64", ""},
		{"leg", attable.TestCut{Depth: in("0.1")}, "raise the bit", "Did it slip?"},
		{"leg", attable.TestCut{Setback: in("1 1/8")}, "move the fence 5/8 toward the bit", "from the back to the near wall. Did you measure that?"},
		{"leg", attable.TestCut{Setback: in("13/16")}, "move the fence 5/16 toward the bit", "Was it another run"},
		{"rail", attable.TestCut{Width: in("1 33/64")}, "move the fence 1/64 toward the bit", ""},
	} {
		lesson, err := corrected(t, c.piece, c.cut)
		require.NoError(t, err, c)
		require.Len(t, lesson.Corrections, 1, c)
		got := lesson.Corrections[0]
		if c.move == "" {
			assert.Empty(t, got.Move, c)
		}
		assert.Contains(t, got.Move, c.move, c)
		assert.Contains(t, got.Ask, c.ask, c)
		if c.ask == "" {
			assert.Empty(t, got.Ask, c)
		} else {
			assert.Nil(t, got.Stands, "nothing is kept of what is asked about")
		}
	}
}

// After the move the fence stands where it stood by so much, and of a start and a length
// the end is known, so that nothing is taken for granted.
func TestWhereItStandsAfterTheMove(t *testing.T) {
	in := func(text string) measure.Length { return workpiece.In(t, text) }
	lesson, err := corrected(t, "leg", attable.TestCut{Setback: in("33/64"), Begins: in("1/2"), Length: in("2 17/32")})
	require.NoError(t, err)
	require.Len(t, lesson.Corrections, 3)
	require.NotNil(t, lesson.Corrections[0].Stands)
	assert.Equal(t, in("31/64"), *lesson.Corrections[0].Stands)
	end := lesson.Corrections[2]
	assert.Equal(t, in("3 1/32"), end.Measured)
	assert.Equal(t, in("3"), end.Wants)
	assert.Empty(t, end.Assumes)
	lesson, err = corrected(t, "leg", attable.TestCut{Length: in("2 17/32")})
	require.NoError(t, err)
	assert.Contains(t, lesson.Corrections[0].Assumes, "if the cut begins where it should, 1/2 from the top end")
}

// What a cut does not have cannot be measured on it: a shoulder has no near wall, and a
// cut that is a tenth off the bit was made by another.
func TestWhatNoTestCutMeasures(t *testing.T) {
	in := func(text string) measure.Length { return workpiece.In(t, text) }
	for _, c := range []struct {
		piece string
		cut   attable.TestCut
		says  string
	}{
		{"rail", attable.TestCut{Setback: in("1")}, "give the distance from that end to the shoulder as --width"},
		{"rail", attable.TestCut{Begins: in("1")}, "has no beginning to measure"},
		{"rail", attable.TestCut{Length: in("1 1/2")}, "is measured from the left end to the shoulder: give it as --width"},
		{"leg", attable.TestCut{Width: in("7/16")}, "more than a tenth off the bit"},
	} {
		_, err := corrected(t, c.piece, c.cut)
		assert.ErrorContains(t, err, c.says)
	}
}

// The width of a cut that two runs made is no measure of their bit, though it comes near
// it: 3/8 and a hair on the way to a groove of 13/32.
func TestAskWhetherTheFinishedCutWasMeasured(t *testing.T) {
	plan, err := planfile.Read("board.yaml", []byte(`unit: in
wood: white ash
shop: {bits: [{bit: three eighths, kind: up-cut, diameter: 3/8, plunges: yes}]}
pieces:
  - piece: board
    size: {left-right: 20, front-back: 6, top-bottom: 3/4}
    cuts: [{groove: shelf, in: top, width: 13/32, setback: 2 from front, depth: 1/4}]
`), nil)
	require.NoError(t, err)
	claims := claimsOf(t, plan)
	for width, ask := range map[string]string{"13/32": "13/32 is how wide the finished groove is, which 2 runs cut.", "0.38": ""} {
		lesson, err := attable.Correct(plan, &claims, "1.1", attable.TestCut{Width: workpiece.In(t, width)})
		require.NoError(t, err)
		assert.Contains(t, lesson.Corrections[0].Ask, ask)
		assert.Equal(t, ask == "", lesson.Corrections[0].Ask == "", width)
	}
}

// What is asked for is what a run has: a mortise both its ends and two walls, a tenon
// across an end a shoulder alone.
func TestWhatCanBeMeasuredOfARun(t *testing.T) {
	plan, err := planfile.Read("leg.yaml", []byte(strings.Replace(legAndRail, "SHOP", "fence: {infeed: 20, outfeed: 20, reach: 12}", 1)), nil)
	require.NoError(t, err)
	claims := claimsOf(t, plan)
	names := func(all []attable.Measure) string {
		var names []string
		for _, m := range all {
			names = append(names, m.Name)
		}
		return strings.Join(names, " ")
	}
	all := attable.AllMeasures(plan, &claims)
	for _, u := range claims.Setups {
		for _, r := range u.Runs {
			of := all[r.Number]
			switch r.Piece {
			case "leg":
				assert.Equal(t, "near centre far start back-stop stop height", names(of.Table))
				assert.Equal(t, "setback width begins length depth", names(of.Cut))
			case "rail":
				assert.Equal(t, "near centre far height", names(of.Table))
				assert.Equal(t, "width depth", names(of.Cut))
			}
		}
	}
}
