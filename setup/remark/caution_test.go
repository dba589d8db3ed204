package remark_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
	"fencecard/setup/remark"
)

// cautioned makes the deck and lists what its last run is cautioned of.
func cautioned(t *testing.T, plan *joinery.Plan) []deck.Caution {
	t.Helper()
	for i := range plan.Pieces {
		require.Empty(t, plan.Pieces[i].LayAll(plan.Shop.Scale))
	}
	d := workpiece.DeckOf(t, plan)
	runs := d.Setups[len(d.Setups)-1].Runs
	return runs[len(runs)-1].Cautions
}

func codes(cautions []deck.Caution) []string {
	var codes []string
	for _, c := range cautions {
		codes = append(codes, c.Code)
	}
	return codes
}

func TestAPlainGrooveHasNoCautionOfItsOwn(t *testing.T) {
	assert.Equal(t, []string{"harmful-dust", "trial-cut"}, codes(cautioned(t, workpiece.PlainPlan(t))), "of a wood that is not named")
}

// Each caution stands on both sides of its edge: quiet brings the work up to
// it, loud takes it over.
func TestCautionsOnBothSidesOfTheirEdges(t *testing.T) {
	const hair = measure.Inch / 64
	cut := func(p *joinery.Plan) *joinery.Cut { return &p.Pieces[0].Cuts[0] }
	bit := func(p *joinery.Plan) *joinery.Bit { return &p.Shop.Bits[0] }
	span := func(from, to string) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			cut(p).Span = joinery.Span{From: workpiece.In(t, from), To: workpiece.In(t, to), Side: joinery.Left}
		}
	}
	long := func(length measure.Length) func(*joinery.Plan) {
		return func(p *joinery.Plan) { p.Pieces[0].Size[joinery.LeftRight] = length }
	}
	both := func(fs ...func(*joinery.Plan)) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			for _, f := range fs {
				f(p)
			}
		}
	}
	across := func(p *joinery.Plan) {
		cut(p).Start.From, cut(p).Kind = joinery.Left, &joinery.Dado
		p.Pieces[0].Size[joinery.FrontBack] = workpiece.In(t, "8")
	}
	setting := func(f func(*joinery.Plan, measure.Length), l measure.Length) func(*joinery.Plan) {
		return func(p *joinery.Plan) { f(p, l) }
	}
	height := func(p *joinery.Plan, l measure.Length) { p.Pieces[0].Size[joinery.TopBottom] = l }
	diameter := func(p *joinery.Plan, l measure.Length) {
		bit(p).Diameter, cut(p).Width = l, l
		p.Pieces[0].Size[joinery.FrontBack] = workpiece.In(t, "8")
	}
	shank := func(p *joinery.Plan, l measure.Length) {
		p.Shop.Bits = append(p.Shop.Bits, joinery.Bit{Name: "other", Diameter: workpiece.In(t, "3/16"), Shank: l})
	}
	setback := func(p *joinery.Plan, l measure.Length) { cut(p).Start.Distance = l }
	infeed := func(p *joinery.Plan, l measure.Length) { p.Shop.Fence.Infeed = l }
	outfeed := func(p *joinery.Plan, l measure.Length) { p.Shop.Fence.Outfeed = l }
	kind := func(k joinery.BitKind) func(*joinery.Plan) { return func(p *joinery.Plan) { bit(p).Kind = k } }
	plunges := func(a joinery.Answer) func(*joinery.Plan) { return func(p *joinery.Plan) { bit(p).Plunges = a } }
	group := func(g timber.WoodGroup) func(*joinery.Plan) {
		return func(p *joinery.Plan) { p.Pieces[0].Wood = timber.Wood{Name: "wood", Group: g} }
	}
	depth := func(p *joinery.Plan, l measure.Length) { cut(p).Depth = l }
	width := func(p *joinery.Plan, l measure.Length) { cut(p).Width = l }
	// Down to 4 in beside the bit at halfway: half the length less the radius.
	narrow := func(p *joinery.Plan) { p.Pieces[0].Size[joinery.FrontBack] = workpiece.In(t, "2") }
	opposite := func(p *joinery.Plan, l measure.Length) {
		other := *cut(p)
		other.Name, other.In, other.Depth = "other", joinery.Top, l
		cut(p).Depth = workpiece.In(t, "3/4")
		p.Pieces[0].Cuts = append(p.Pieces[0].Cuts, other)
	}
	none := func(*joinery.Plan) {}
	bored := func(p *joinery.Plan) { cut(p).Bored = true }
	raises := func(p *joinery.Plan) { p.Shop.Raises = true }
	lap := func(length string) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			*cut(p) = joinery.Cut{Kind: &joinery.Lap, Name: "lap", In: joinery.Bottom, At: joinery.Left, Length: workpiece.In(t, length), Depth: workpiece.In(t, "1/4")}
		}
	}
	broad := func(p *joinery.Plan, l measure.Length) { p.Pieces[0].Size[joinery.FrontBack] = l }
	cedar := func(p *joinery.Plan) {
		p.Pieces[0].Wood, _, _ = timber.FindWood("western redcedar")
	}
	handsFree := func(p *joinery.Plan) { p.Shop.Rules.HandDistance = 0 }

	shaped := func(radius, raise string) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			r := workpiece.In(t, radius)
			o := &joinery.Outline{Shape: joinery.Sloped, Radius: r}
			p.Shop.Bits = []joinery.Bit{{Name: "slope", Kind: joinery.Chamfer, Diameter: workpiece.In(t, "1/2") + 2*r, Outline: o, Pilot: workpiece.In(t, "1/2")}}
			*cut(p) = joinery.Cut{Kind: &joinery.Profile, Name: "edge", Moulding: &joinery.Moulding{Down: joinery.Bottom, Fence: joinery.Front, Outline: o, Raise: workpiece.In(t, raise)}}
		}
	}
	edged := func(high string, more measure.Length) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			p.Pieces[0].Size[joinery.FrontBack], p.Pieces[0].Size[joinery.TopBottom] = workpiece.In(t, "3/4"), workpiece.In(t, high)+more
			*cut(p) = joinery.Cut{Kind: &joinery.Rabbet, Name: "edge", In: joinery.Bottom, Along: joinery.Front, Width: workpiece.In(t, "3/8"), Depth: workpiece.In(t, "1/4")}
		}
	}
	meeting := func(deep string) func(*joinery.Plan) { // from the top, into a mortise or over it
		return func(p *joinery.Plan) {
			span("1", "23")(p)
			cut(p).Depth = workpiece.In(t, "5/8")
			other := *cut(p)
			other.Name, other.In, other.Depth = "other", joinery.Top, workpiece.In(t, deep)
			p.Pieces[0].Cuts = append(p.Pieces[0].Cuts, other)
		}
	}
	rows := []struct {
		code        string
		quiet, loud func(*joinery.Plan)
	}{
		// The grooves lead with the right end: front to the fence, bottom down.
		{"trapped-wood", setting(setback, workpiece.In(t, "2 1/2")-hair), setting(setback, workpiece.In(t, "2 1/2"))},
		{"trapped-wood", setting(setback, 0), setting(setback, workpiece.In(t, "2 1/2"))},
		{"cuts-apart", setting(depth, workpiece.In(t, "1 1/2")-hair), setting(depth, workpiece.In(t, "1 1/2"))},
		{"cuts-apart", both(setting(depth, workpiece.In(t, "1 1/2")), span("1/4", "24")), setting(depth, workpiece.In(t, "1 1/2"))},
		{"cuts-apart", setting(opposite, workpiece.In(t, "3/4")-hair), setting(opposite, workpiece.In(t, "3/4"))},
		{"start-stopped", span("1", "24"), span("1", "23")},
		{"end-stopped", span("0", "23"), span("1", "23")},
		{"start-hole", both(span("1", "23"), plunges(joinery.Yes)), both(span("1", "23"), plunges(joinery.NotSaid))},
		{"start-hole", both(span("1", "24"), plunges(joinery.NotSaid)), both(span("1", "23"), plunges(joinery.NotSaid))},
		{"down-cut-blind", kind(joinery.DownCut), both(kind(joinery.DownCut), span("1", "24"))},
		{"down-cut-blind", both(kind(joinery.UpCut), span("1", "23")), both(kind(joinery.DownCut), span("1", "23"))},
		{"fence-order", none, setting(width, workpiece.In(t, "1/2")+hair)},
		{"edge-cut", setting(setback, hair), setting(setback, 0)},
		{"edge-cut", both(setting(setback, 0), setting(width, workpiece.In(t, "1/2")+hair)), setting(setback, 0)},
		{"hands-near", both(narrow, long(workpiece.In(t, "8 1/2"))), both(narrow, long(workpiece.In(t, "8 1/2")-hair))},
		{"short-piece", long(workpiece.In(t, "12")), long(workpiece.In(t, "12") - hair)},
		{"tall-piece", setting(height, workpiece.In(t, "6")), setting(height, workpiece.In(t, "6")+hair)},
		{"tall-piece", both(setting(broad, workpiece.In(t, "8")), long(workpiece.In(t, "3")), setting(height, workpiece.In(t, "6"))), both(setting(broad, workpiece.In(t, "8")), long(workpiece.In(t, "3")), setting(height, workpiece.In(t, "6")+hair))},
		{"support", setting(broad, workpiece.In(t, "16 1/2")), setting(broad, workpiece.In(t, "16 1/2")+hair)},
		{"large-bit", setting(diameter, workpiece.In(t, "1")), setting(diameter, workpiece.In(t, "1")+hair)},
		{"shank-and-collet", setting(shank, workpiece.In(t, "1/2")), setting(shank, workpiece.MM(t, "12"))},
		{"shank-and-collet", setting(shank, workpiece.MM(t, "11.7")), setting(shank, workpiece.MM(t, "11.8"))},
		{"open-fence", both(long(workpiece.In(t, "6")), setting(setback, 0)), both(long(workpiece.In(t, "6")-hair), setting(setback, 0))},
		{"open-fence", both(long(workpiece.In(t, "6")), setting(setback, hair)), both(long(workpiece.In(t, "5")), setting(setback, hair))},
		{"support", setting(infeed, workpiece.In(t, "24")), setting(infeed, workpiece.In(t, "24")-hair)},
		{"support", setting(outfeed, workpiece.In(t, "24")), setting(outfeed, workpiece.In(t, "24")-hair)},
		{"harmful-dust", group(timber.Softwood), group(timber.Hardwood)},
		{"harmful-dust", group(timber.Softwood), none},
		{"harmful-dust", group(timber.Softwood), cedar},
		{"harmful-dust", group(timber.Softwood), group(timber.Own)},
		{"dust", group(timber.Sheet), group(timber.Softwood)},
		{"dust", cedar, group(timber.Softwood)},
		// The tail before the bit's near edge is 4 in, or a hair less.
		{"steep-drop", span("1", "4 1/2"), span("1", "4 31/64")},
		// At 1 in the bit and with no rule for hands: atan(1 / 3 47/64) is 14.99
		// degrees, atan(1 / 3 46/64) 15.05 (worked out).
		{"steep-drop", both(handsFree, setting(depth, workpiece.In(t, "1")), span("1", "4 15/64")), both(handsFree, setting(depth, workpiece.In(t, "1")), span("1", "4 14/64"))},
		{"bored-start", span("1", "23"), both(bored, span("1", "23"))},
		{"bored-start", both(bored, span("1", "24")), both(bored, span("1", "23"))},
		{"start-stopped", both(bored, span("1", "23")), span("1", "23")},
		{"start-hole", both(bored, span("1", "23"), plunges(joinery.NotSaid)), both(span("1", "23"), plunges(joinery.NotSaid))},
		{"raised-bit", both(raises, span("1", "4 1/2")), both(raises, span("1", "4 31/64"))},
		{"raised-bit", both(raises, bored, span("1", "4 31/64")), both(raises, span("1", "4 31/64"))},
		{"steep-drop", both(raises, span("1", "4 31/64")), span("1", "4 31/64")},
		{"nibbled", lap("1/2"), lap("33/64")},
		// At 1 in and 24 in of tail the mouth begins 0.0208 in early (worked out).
		{"breaks-out", both(setting(depth, workpiece.In(t, "1")), span("1", "23 31/32")), both(setting(depth, workpiece.In(t, "1")), span("1", "23 63/64"))},
		// At 1/2 in the mouth begins sqrt(t^2 + 1/4) - t early: 0.0156 at 8 in.
		{"early-mouth", both(setting(depth, workpiece.In(t, "1/2")), span("1", "8")), both(setting(depth, workpiece.In(t, "1/2")), span("1", "7"))},
		{"guided", across, both(across, setting(broad, workpiece.In(t, "6")-hair))},
		{"guided", both(long(workpiece.In(t, "5"))), both(across, setting(broad, workpiece.In(t, "5")))},
		{"swings", both(across, setting(broad, workpiece.In(t, "6"))), both(across, setting(broad, workpiece.In(t, "6")-hair))},
		{"comes-through", both(span("1", "23"), setting(depth, workpiece.In(t, "1 1/2")-hair)), both(span("1", "23"), setting(depth, workpiece.In(t, "1 1/2")))},
		{"across-grain", none, across},
		{"passes", setting(depth, workpiece.In(t, "1/4")), setting(depth, workpiece.In(t, "1/4")+hair)},
		{"thin-wall", setting(setback, workpiece.In(t, "1/4")), setting(setback, workpiece.In(t, "1/4")-hair)},
		{"slender-bit", both(setting(diameter, workpiece.In(t, "1/4")), setting(depth, workpiece.In(t, "1 1/4"))), both(setting(diameter, workpiece.In(t, "1/4")), setting(depth, workpiece.In(t, "1 1/4")+hair))},
		{"thin-wall", setting(setback, workpiece.In(t, "2 1/4")), setting(setback, workpiece.In(t, "2 1/4")+hair)},
	}
	rows = append(rows, []struct {
		code        string
		quiet, loud func(*joinery.Plan)
	}{
		{"shaped-edge", lap("1/2"), shaped("1/4", "1/8")},
		{"fades", shaped("1/4", "1/8"), both(shaped("1/4", "1/8"), span("0", "23"))},
		{"fades", span("1", "23"), both(shaped("1/4", "1/8"), span("1", "24"))},
		{"start-hole", both(shaped("1/4", "1/8"), span("1", "23")), both(plunges(joinery.NotSaid), span("1", "23"))},
		{"early-mouth", both(shaped("1/2", "1/2"), span("1", "8")), both(setting(depth, workpiece.In(t, "1/2")), span("1", "7"))},
		{"panel-bit", shaped("23/32", "1/8"), shaped("3/4", "1/8")},
		// On edge, 3/8 in is left of 3/4 and stands 3 in high, or a hair higher.
		{"on-edge", edged("3", 0), edged("3", hair)},
		{"opens-into", meeting("55/64"), meeting("15/16")},
		{"wide-opening", shaped("1/2", "1/8"), shaped("33/64", "1/8")},
	}...)
	seen := map[string]bool{"trial-cut": true, "ends-first": true, "stands-far": true, "end-gone": true} // see their own tests
	for _, r := range rows {
		t.Run(r.code, func(t *testing.T) {
			plan := workpiece.PlainPlan(t)
			r.quiet(plan)
			assert.NotContains(t, codes(cautioned(t, plan)), r.code, "quiet")
			plan = workpiece.PlainPlan(t)
			r.loud(plan)
			assert.Contains(t, codes(cautioned(t, plan)), r.code, "loud")
		})
		seen[r.code] = true
	}
	for _, c := range remark.CautionTable(&joinery.Shop{Scale: measure.InchScale}) {
		assert.True(t, seen[c.Code], "%s is not tested", c.Code)
	}
}

// The narrow cuts of the sideboard are cut by a bit with 17 mm of cutting edge,
// through 22 and 45 mm of wood: its shank follows into the wide ones.
func TestABitThatStandsFarOutOfItsCollet(t *testing.T) {
	d := workpiece.DeckOf(t, workpiece.RealPlans(t)["sideboard"])
	var told []string
	for _, u := range d.Setups {
		for _, r := range u.Runs {
			if slices.Contains(codes(r.Cautions), "stands-far") {
				assert.Equal(t, 17*measure.Millimetre, u.Bit.Cutting)
				told = append(told, measure.MetricScale.Format(r.Channel.Depth))
			}
		}
	}
	slices.Sort(told)
	assert.Equal(t, []string{"22", "45"}, slices.Compact(told))
}

func TestTrialSlotIsForTheFirstCard(t *testing.T) {
	plan := workpiece.PlainPlan(t)
	second := plan.Pieces[0].Cuts[0]
	second.Name, second.In = "second", joinery.Top
	plan.Pieces[0].Cuts = append(plan.Pieces[0].Cuts, second)
	require.Empty(t, plan.Pieces[0].LayAll(plan.Shop.Scale))
	runs := workpiece.DeckOf(t, plan).Setups[0].Runs
	require.Len(t, runs, 2)
	assert.Contains(t, codes(runs[0].Cautions), "trial-cut")
	assert.NotContains(t, codes(runs[1].Cautions), "trial-cut")
}

// The shop's rules are the maker's to change.
func TestCautionsFollowTheShopsRules(t *testing.T) {
	plan := workpiece.PlainPlan(t)
	plan.Shop.Rules = joinery.Rules{ShortPiece: workpiece.In(t, "30"), HandDistance: workpiece.In(t, "12")}
	found := cautioned(t, plan)
	assert.Contains(t, codes(found), "short-piece")
	assert.Contains(t, codes(found), "hands-near")
	at := slices.IndexFunc(found, func(c deck.Caution) bool { return c.Code == "short-piece" })
	assert.Contains(t, found[at].Words, "shorter than 30 in")
}

func TestTheGravestComeFirst(t *testing.T) {
	table := remark.CautionTable(&joinery.Shop{Scale: measure.InchScale, Rules: joinery.DefaultRules(measure.Inches)})
	weight := deck.Grave
	for i, c := range table {
		assert.Equal(t, i+1, c.Number)
		assert.LessOrEqual(t, c.Weight, weight, c.Code)
		assert.NotEmpty(t, c.Basis, c.Code)
		assert.NotContains(t, c.Words+c.Brief, "{", c.Code)
		assert.Less(t, len(c.Brief), len(c.Words), c.Code)
		assert.NotEmpty(t, c.Brief, c.Code)
		assert.LessOrEqual(t, len(c.Words), 240, "%s: a card has room for what applies, not for a wall of text", c.Code)
		assert.False(t, strings.Contains(c.Words, "  "), c.Code)
		weight = c.Weight
	}
}

// Of two edges at one bit that take several heights, the end is cut first and says so.
func TestEndsFirstIsForTheEndsOfAShapedPiece(t *testing.T) {
	plan := workpiece.PlainPlan(t)
	o := &joinery.Outline{Shape: joinery.Round, Radius: workpiece.In(t, "1/2")}
	plan.Shop.Bits = []joinery.Bit{{Name: "round", Kind: joinery.RoundOver, Diameter: workpiece.In(t, "1 1/2"), Outline: o, Pilot: workpiece.In(t, "1/2")}}
	edge := func(name string, fence joinery.Side) joinery.Cut {
		return joinery.Cut{Kind: &joinery.Profile, Name: name, Moulding: &joinery.Moulding{Down: joinery.Bottom, Fence: fence, Outline: o}}
	}
	plan.Pieces[0].Cuts = []joinery.Cut{edge("long edge", joinery.Front), edge("end", joinery.Left)}
	require.Empty(t, plan.Pieces[0].LayAll(plan.Shop.Scale))
	runs := workpiece.DeckOf(t, plan).Setups[0].Runs
	require.Len(t, runs, 2)
	assert.Equal(t, "end", runs[0].Cut.Name)
	assert.Contains(t, codes(runs[0].Cautions), "ends-first")
	assert.NotContains(t, codes(runs[1].Cautions), "ends-first")
	plan.Pieces[0].Cuts = plan.Pieces[0].Cuts[1:]
	assert.NotContains(t, codes(workpiece.DeckOf(t, plan).Setups[0].Runs[0].Cautions), "ends-first")
}
