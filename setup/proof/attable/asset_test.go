package attable_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/proof"
	"fencecard/setup/proof/attable"
)

// legAndRail are a leg and its mirror image with a mortise, and a rail with a
// tenon, in a shop that is told by its fence, its stops and how it crosses ends.
const legAndRail = `
unit: in
wood: white ash
shop: {SHOP, bits: [{bit: three eighths, kind: up-cut, diameter: 3/8, plunges: yes}]}
pieces:
  - piece: leg
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts: [{mortise: rail, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1}]
  - piece: other leg
    mirror: {of: leg, across: left-right}
  - piece: rail
    size: {left-right: 34, front-back: 1, top-bottom: 3}
    cuts: [{tenon: end, at: left, length: 1 1/2, cheeks: {front: 3/16}}]
`

// claimsOf are the runs of a plan as its papers say them.
func claimsOf(t *testing.T, plan *joinery.Plan) proof.Claims {
	t.Helper()
	d, err := setup.Make(plan)
	require.NoError(t, err)
	return proof.Of(d)
}

// standing asks about a run of a piece in a shop.
func standing(t *testing.T, shop, piece string, s attable.Settings) attable.Standing {
	t.Helper()
	plan, err := planfile.Read("leg.yaml", []byte(strings.Replace(legAndRail, "SHOP", shop, 1)), nil)
	require.NoError(t, err)
	claims := claimsOf(t, plan)
	for _, u := range claims.Setups {
		for _, c := range u.Runs {
			if c.Piece == piece {
				as, err := attable.AsSet(plan, &claims, c.Number, s)
				require.NoError(t, err)
				return as
			}
		}
	}
	t.Fatal("no run of " + piece)
	return attable.Standing{}
}

// A mark is measured with the end of the work and from the edge of the bit that
// the sheet says, whichever those are; moved as the answer says, it is right. The
// numbers are those of a leg 17 long with a mortise from 1/2 to 3 below its top,
// cut with a bit of 3/8: leading end 1/2 past the trailing edge at the start and 3
// past the leading edge at the stop, tail 16 1/2 and 14 before them; its mirror
// image has tail 3 and 1/2.
func TestMarksAsTheSheetSaysThem(t *testing.T) {
	in := func(text string) *measure.Length { l := workpiece.In(t, text); return &l }
	const wide, short = "fence: {infeed: 20, outfeed: 20, reach: 12}", "fence: {infeed: 2, outfeed: 2, reach: 12}"
	for _, c := range []struct {
		shop, piece string
		set         attable.Settings
		as, move    string
		wants       string
	}{
		{wide, "leg", attable.Settings{Start: in("17/32")}, "trailing (left) edge to the top end, which leads", "move the start mark 1/32 to the right, the infeed, and the back stop with it", "1/2"},
		{wide, "leg", attable.Settings{Stop: in("2 31/32")}, "leading (right) edge to the top end, which leads", "move the stop mark 1/32 to the left, the outfeed", "3"},
		{wide, "leg", attable.Settings{BackStop: in("16 17/32")}, "trailing (left) edge to the bottom end, the tail", "move the back stop 1/32 to the left, the outfeed", "16 1/2"},
		{wide, "other leg", attable.Settings{Start: in("2 31/32")}, "trailing (left) edge to the top end, the tail", "move the back stop 1/32 to the right, the infeed", "3"},
		{wide, "other leg", attable.Settings{Stop: in("17/32")}, "leading (right) edge to the top end, the tail", "move the stop mark 1/32 to the left, the outfeed", "1/2"},
		{wide + ", stops: blocks", "leg", attable.Settings{Start: in("16 17/32")}, "trailing (left) edge to the bottom end, the tail", "move the back stop 1/32 to the left, the outfeed", "16 1/2"},
		{wide + ", stops: blocks", "other leg", attable.Settings{Stop: in("16 17/32")}, "leading (right) edge to the bottom end, which leads", "move the front stop 1/32 to the right, the infeed", "16 1/2"},
		{short, "other leg", attable.Settings{Start: in("14 1/32")}, "from the bottom end, which leads, to the pencil line", "draw the line 1/32 nearer the bottom end, and bring the back stop up anew", "14"},
		{short, "leg", attable.Settings{Stop: in("2 31/32")}, "from the top end, which leads, to the pencil line", "draw the line 1/32 farther from the top end", "3"},
	} {
		as := standing(t, c.shop, c.piece, c.set)
		require.Len(t, as.Found, 1)
		f := as.Found[0]
		assert.Contains(t, f.As, c.as)
		assert.Equal(t, c.move, f.Move, c.as)
		assert.Equal(t, workpiece.In(t, c.wants), f.Wants)
		assert.Equal(t, workpiece.In(t, "1/32"), (f.Makes[0].Would - f.Makes[0].Wants).Abs())
		assert.Empty(t, f.Ask)

		right := c.set
		for _, l := range []**measure.Length{&right.Start, &right.Stop, &right.BackStop} {
			if *l != nil {
				*l = &f.Wants
			}
		}
		as = standing(t, c.shop, c.piece, right)
		assert.True(t, as.Right())
	}
}

// A reading that is right by another number of the run is asked about.
func TestAskWhatWasMeasured(t *testing.T) {
	in := func(text string) *measure.Length { l := workpiece.In(t, text); return &l }
	const shop = "fence: {infeed: 20, outfeed: 20, reach: 12}"
	for _, c := range []struct {
		piece string
		set   attable.Settings
		ask   string
	}{
		{"leg", attable.Settings{Near: in("11/16")}, "11/16 is what the sheet says to the centre of the bit."},
		{"leg", attable.Settings{Centre: in("1/2")}, "1/2 is what the sheet says to the near edge of the bit."},
		{"leg", attable.Settings{Centre: in("7/8")}, "7/8 is what the sheet says to the far edge of the bit."},
		{"leg", attable.Settings{Start: in("11/16")}, "11/16 is what the sheet says from the bit's centre to the top end, which leads, at the start."},
		{"leg", attable.Settings{Start: in("16 1/2")}, "16 1/2 is what the sheet says from the bit's trailing (left) edge to the bottom end, the tail, at the start."},
		{"leg", attable.Settings{Start: in("3")}, "3 is what the sheet says from the bit's leading (right) edge to the top end, which leads, at the stop."},
		{"leg", attable.Settings{Stop: in("2 13/16")}, "2 13/16 is what the sheet says from the bit's centre to the top end, which leads, at the stop."},
		{"leg", attable.Settings{Near: in("33/64")}, ""},
		{"leg", attable.Settings{Near: in("1/2"), Centre: in("11/16"), Far: in("7/8"), Start: in("1/2"), Stop: in("3")}, ""},
		{"rail", attable.Settings{Near: in("1 1/2")}, "1 1/2 is what the sheet says to the far edge of the bit."},
	} {
		for _, f := range standing(t, shop, c.piece, c.set).Found {
			if c.ask == "" {
				assert.Empty(t, f.Ask)
				continue
			}
			assert.Equal(t, c.ask+" Did you measure that?", f.Ask)
			assert.NotEmpty(t, f.Move)
		}
	}
}

// A tenon 1 1/2 long nibbled with a bit of 3/8 has a shoulder at the far edge of
// the bit and no near wall, and on a carriage 1/2 thick the bit stands 1/2 higher
// than the cut is deep.
func TestAcrossAnEndTheShoulderCounts(t *testing.T) {
	in := func(text string) *measure.Length { l := workpiece.In(t, text); return &l }
	const shop = "fence: {infeed: 20, outfeed: 20, reach: 12}, crossing: {carriage: 1/2}"
	as := standing(t, shop, "rail", attable.Settings{Near: in("1 9/64"), Height: in("11/16")})
	require.Len(t, as.Found, 2)
	assert.Equal(t, "move the fence 1/64 toward the bit", as.Found[0].Move)
	require.Len(t, as.Found[0].Makes, 1)
	assert.Equal(t, attable.Made{What: "shoulder", From: "the left", Would: *in("1 33/64"), Wants: *in("1 1/2"), Words: "1/64 too near the right"}, as.Found[0].Makes[0])
	assert.True(t, as.Found[1].Right())
	as = standing(t, shop, "rail", attable.Settings{Height: in("3/16")})
	assert.Equal(t, "raise the bit 1/2", as.Found[0].Move)
	assert.Equal(t, "3/16 is the depth of the cut. Did you measure above the carriage?", as.Found[0].Ask)
}

// A reading from the other edge of the bit, 3/8 wide here, is off by its diameter:
// more where that edge is farther from the end of the work, less where it is
// nearer. One edge of a bit buried in the fence has a minus.
func TestAskAboutTheOtherEdge(t *testing.T) {
	in := func(text string) *measure.Length { l := workpiece.In(t, text); return &l }
	const wide, short = "fence: {infeed: 20, outfeed: 20, reach: 12}", "fence: {infeed: 2, outfeed: 2, reach: 12}"
	const left, right = "trailing (left) edge", "leading (right) edge"
	for _, c := range []struct {
		shop, piece string
		set         attable.Settings
		ask         string
	}{
		{wide, "leg", attable.Settings{Start: in("7/8")}, right},       // 1/2 and the bit
		{wide, "leg", attable.Settings{Stop: in("2 5/8")}, left},       // 3 less the bit
		{wide, "leg", attable.Settings{BackStop: in("16 1/8")}, right}, // 16 1/2 less the bit
		{wide, "other leg", attable.Settings{Start: in("2 5/8")}, right},
		{wide, "other leg", attable.Settings{Stop: in("7/8")}, left},
		{wide + ", stops: blocks", "other leg", attable.Settings{Stop: in("16 1/8")}, left},
		{wide, "leg", attable.Settings{Start: in("1/8")}, ""}, // no edge is there
		{wide, "leg", attable.Settings{Start: in("55/64")}, ""},
		{short, "other leg", attable.Settings{Start: in("14 3/8")}, ""}, // a line, and no edge
	} {
		f := standing(t, c.shop, c.piece, c.set).Found[0]
		assert.NotEmpty(t, f.Move)
		if c.ask == "" {
			assert.Empty(t, f.Ask)
			continue
		}
		assert.Contains(t, f.Ask, "is what it would be from the bit's "+c.ask+". Did you measure from there?")
	}
}

// A bit that stands as high as another run wants it may never have been moved since, or
// was set for the wrong run.
func TestAskAboutTheHeightOfAnotherRun(t *testing.T) {
	const legs = `unit: in
wood: white ash
shop: {bits: [{bit: three eighths, kind: up-cut, diameter: 3/8, plunges: yes}]}
pieces:
  - piece: leg
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: upper, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1}
      - {mortise: lower, in: right, width: 3/8, setback: 1/2 from front, span: 8 to 10 from top, depth: 3/8}
      - {groove: panel, in: front, width: 3/8, setback: 1/4 from right, span: 5 to 7 from top, depth: 11/16}
`
	plan, err := planfile.Read("legs.yaml", []byte(legs), nil)
	require.NoError(t, err)
	claims := claimsOf(t, plan)
	number := map[string]string{}
	for _, u := range claims.Setups {
		for _, r := range u.Runs {
			number[r.Cut] = r.Number
		}
	}
	asked := func(of, height string) attable.Finding {
		h := workpiece.In(t, height)
		as, err := attable.AsSet(plan, &claims, number[of], attable.Settings{Height: &h})
		require.NoError(t, err)
		return as.Found[0]
	}
	setup, _, _ := strings.Cut(number["panel"], ".")
	f := asked("upper", "11/16")
	assert.Equal(t, "11/16 is the full height of run "+number["panel"]+", at setup "+setup+". Does the bit still stand as it did there?", f.Ask)
	assert.Equal(t, "lower the bit 3/32 for height 3", f.Move, "not up to the full height at once")
	assert.Equal(t, "19/32", plan.Shop.Scale.Format(f.Wants))
	f = asked("lower", "1")
	assert.Empty(t, f.Ask)
	assert.Equal(t, "leave the bit, and do not cut this run now: 1 is height 5, which it skips; its own are heights 1 and 2", f.Move)
	assert.Equal(t, "1 would be right, with the point at another place. Did it slip?", asked("upper", "0.1").Ask)
	assert.Empty(t, asked("upper", "63/64").Ask)
	assert.Empty(t, asked("upper", "1").Ask)
	f = asked("upper", "3/8") // of the lower one, and no height on the way to this
	if f.Move != "" {
		assert.Contains(t, f.Ask, number["lower"])
	}
}

// The height of a bit with a pilot is to the pilot's underside: who measured to the
// top of it is asked, before the bit is lowered and cuts too shallow.
func TestAHeightIsToTheUndersideOfThePilot(t *testing.T) {
	plan, err := planfile.Read("panel.yaml", []byte(`unit: in
wood: white oak
shop:
  opening: 3
  bits: [{bit: table panel, kind: outline, outline: [[0, 3/8], [1/4, 1]], pilot: 1/2, diameter: 2 1/2, cutting: 1/2, shank: 1/2}]
pieces:
  - piece: panel
    size: {left-right: 14, front-back: 3/4, top-bottom: 16}
    grain: top-bottom
    cuts: [{panel: raised field, in: front, bit: table panel, leaves: 1/4}]
`), nil)
	require.NoError(t, err)
	claims := claimsOf(t, plan)
	for height, ask := range map[string]string{"1/2": "", "7/16": "", "7/8": "Did you measure to the top of the pilot? The height is to its underside."} {
		l := workpiece.In(t, height)
		as, err := attable.AsSet(plan, &claims, "1.1", attable.Settings{Height: &l})
		require.NoError(t, err)
		require.Len(t, as.Found, 1)
		assert.Equal(t, "from the table to the underside of the pilot", as.Found[0].As)
		assert.Equal(t, ask, as.Found[0].Ask, height)
	}
	for number, of := range attable.AllMeasures(plan, &claims) {
		assert.Equal(t, attable.Measure{Name: "height", Words: "from the table to the underside of the pilot"}, of.Table[len(of.Table)-1], number)
	}
}
