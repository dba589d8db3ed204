package setup_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
)

// cautioned makes the deck and lists what its last card is cautioned of.
func cautioned(t *testing.T, plan *joinery.Plan) []setup.Caution {
	t.Helper()
	for i := range plan.Pieces {
		require.Empty(t, plan.Pieces[i].LayAll(plan.Shop.Scale))
	}
	d := deckOf(t, plan)
	cards := d.Setups[len(d.Setups)-1].Cards
	return cards[len(cards)-1].Cautions
}

func codes(cautions []setup.Caution) []string {
	var codes []string
	for _, c := range cautions {
		codes = append(codes, c.Code)
	}
	return codes
}

func TestAPlainGrooveHasNoCautionOfItsOwn(t *testing.T) {
	assert.Equal(t, []string{"trial-slot"}, codes(cautioned(t, plainPlan(t))))
}

// Each caution stands on both sides of its edge: quiet brings the work up to
// it, loud takes it over.
func TestCautionsOnBothSidesOfTheirEdges(t *testing.T) {
	const hair = joinery.Inch / 64
	cut := func(p *joinery.Plan) *joinery.Cut { return &p.Pieces[0].Cuts[0] }
	bit := func(p *joinery.Plan) *joinery.Bit { return &p.Shop.Bits[0] }
	span := func(from, to string) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			cut(p).Span = joinery.Span{From: in(t, from), To: in(t, to), Side: joinery.Left}
		}
	}
	long := func(length joinery.Length) func(*joinery.Plan) {
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
		p.Pieces[0].Size[joinery.FrontBack] = in(t, "8")
	}
	setting := func(f func(*joinery.Plan, joinery.Length), l joinery.Length) func(*joinery.Plan) {
		return func(p *joinery.Plan) { f(p, l) }
	}
	height := func(p *joinery.Plan, l joinery.Length) { p.Pieces[0].Size[joinery.TopBottom] = l }
	diameter := func(p *joinery.Plan, l joinery.Length) {
		bit(p).Diameter, cut(p).Width = l, l
		p.Pieces[0].Size[joinery.FrontBack] = in(t, "8")
	}
	shank := func(p *joinery.Plan, l joinery.Length) {
		p.Shop.Bits = append(p.Shop.Bits, joinery.Bit{Name: "other", Diameter: in(t, "3/16"), Shank: l})
	}
	setback := func(p *joinery.Plan, l joinery.Length) { cut(p).Start.Distance = l }
	infeed := func(p *joinery.Plan, l joinery.Length) { p.Shop.Fence.Infeed = l }
	outfeed := func(p *joinery.Plan, l joinery.Length) { p.Shop.Fence.Outfeed = l }
	kind := func(k joinery.BitKind) func(*joinery.Plan) { return func(p *joinery.Plan) { bit(p).Kind = k } }
	plunges := func(a joinery.Answer) func(*joinery.Plan) { return func(p *joinery.Plan) { bit(p).Plunges = a } }
	group := func(g joinery.WoodGroup) func(*joinery.Plan) {
		return func(p *joinery.Plan) { p.Pieces[0].Wood = joinery.Wood{Name: "wood", Group: g} }
	}
	depth := func(p *joinery.Plan, l joinery.Length) { cut(p).Depth = l }
	width := func(p *joinery.Plan, l joinery.Length) { cut(p).Width = l }
	// Down to 4 in beside the bit at halfway: half the length less the radius.
	narrow := func(p *joinery.Plan) { p.Pieces[0].Size[joinery.FrontBack] = in(t, "2") }
	opposite := func(p *joinery.Plan, l joinery.Length) {
		other := *cut(p)
		other.Name, other.In, other.Depth = "other", joinery.Top, l
		cut(p).Depth = in(t, "3/4")
		p.Pieces[0].Cuts = append(p.Pieces[0].Cuts, other)
	}
	none := func(*joinery.Plan) {}

	rows := []struct {
		code        string
		quiet, loud func(*joinery.Plan)
	}{
		// The grooves lead with the right end: front to the fence, bottom down.
		{"trapped-wood", setting(setback, in(t, "2 1/2")-hair), setting(setback, in(t, "2 1/2"))},
		{"trapped-wood", setting(setback, 0), setting(setback, in(t, "2 1/2"))},
		{"cuts-apart", setting(depth, in(t, "1 1/2")-hair), setting(depth, in(t, "1 1/2"))},
		{"cuts-apart", both(setting(depth, in(t, "1 1/2")), span("1/4", "24")), setting(depth, in(t, "1 1/2"))},
		{"cuts-apart", setting(opposite, in(t, "3/4")-hair), setting(opposite, in(t, "3/4"))},
		{"start-stopped", span("1", "24"), span("1", "23")},
		{"end-stopped", span("0", "23"), span("1", "23")},
		{"start-hole", both(span("1", "23"), plunges(joinery.Yes)), both(span("1", "23"), plunges(joinery.NotSaid))},
		{"start-hole", both(span("1", "24"), plunges(joinery.NotSaid)), both(span("1", "23"), plunges(joinery.NotSaid))},
		{"down-cut-blind", kind(joinery.DownCut), both(kind(joinery.DownCut), span("1", "24"))},
		{"down-cut-blind", both(kind(joinery.UpCut), span("1", "23")), both(kind(joinery.DownCut), span("1", "23"))},
		{"fence-order", none, setting(width, in(t, "1/2")+hair)},
		{"edge-cut", setting(setback, hair), setting(setback, 0)},
		{"edge-cut", both(setting(setback, 0), setting(width, in(t, "1/2")+hair)), setting(setback, 0)},
		{"hands-near", both(narrow, long(in(t, "8 1/2"))), both(narrow, long(in(t, "8 1/2")-hair))},
		{"short-piece", long(in(t, "12")), long(in(t, "12") - hair)},
		{"tall-piece", setting(height, in(t, "9")), setting(height, in(t, "9")+hair)},
		{"large-bit", setting(diameter, in(t, "1")), setting(diameter, in(t, "1")+hair)},
		{"shank-and-collet", setting(shank, in(t, "1/2")), setting(shank, mm(t, "12"))},
		{"shank-and-collet", setting(shank, mm(t, "11.7")), setting(shank, mm(t, "11.8"))},
		{"open-fence", both(long(in(t, "6")), setting(setback, 0)), both(long(in(t, "6")-hair), setting(setback, 0))},
		{"open-fence", both(long(in(t, "5")), setting(setback, hair)), both(long(in(t, "5")), setting(setback, 0))},
		{"support", setting(infeed, in(t, "24")), setting(infeed, in(t, "24")-hair)},
		{"support", setting(outfeed, in(t, "24")), setting(outfeed, in(t, "24")-hair)},
		{"hard-dust", group(joinery.Softwood), group(joinery.Hardwood)},
		{"hard-dust", group(joinery.Own), group(joinery.Sheet)},
		{"across-grain", none, across},
		{"passes", setting(depth, in(t, "1/4")), setting(depth, in(t, "1/4")+hair)},
		{"thin-wall", setting(setback, in(t, "1/4")), setting(setback, in(t, "1/4")-hair)},
		{"thin-wall", setting(setback, in(t, "2 1/4")), setting(setback, in(t, "2 1/4")+hair)},
	}
	seen := map[string]bool{"trial-slot": true}
	for _, r := range rows {
		t.Run(r.code, func(t *testing.T) {
			plan := plainPlan(t)
			r.quiet(plan)
			assert.NotContains(t, codes(cautioned(t, plan)), r.code, "quiet")
			plan = plainPlan(t)
			r.loud(plan)
			assert.Contains(t, codes(cautioned(t, plan)), r.code, "loud")
		})
		seen[r.code] = true
	}
	for _, c := range setup.CautionTable(&joinery.Shop{Scale: joinery.InchScale}) {
		assert.True(t, seen[c.Code], "%s is not tested", c.Code)
	}
}

func TestTrialSlotIsForTheFirstCard(t *testing.T) {
	plan := plainPlan(t)
	second := plan.Pieces[0].Cuts[0]
	second.Name, second.In = "second", joinery.Top
	plan.Pieces[0].Cuts = append(plan.Pieces[0].Cuts, second)
	require.Empty(t, plan.Pieces[0].LayAll(plan.Shop.Scale))
	cards := deckOf(t, plan).Setups[0].Cards
	require.Len(t, cards, 2)
	assert.Contains(t, codes(cards[0].Cautions), "trial-slot")
	assert.NotContains(t, codes(cards[1].Cautions), "trial-slot")
}

// The shop's rules are the maker's to change.
func TestCautionsFollowTheShopsRules(t *testing.T) {
	plan := plainPlan(t)
	plan.Shop.Rules = joinery.Rules{ShortPiece: in(t, "30"), HandDistance: in(t, "12")}
	found := cautioned(t, plan)
	assert.Contains(t, codes(found), "short-piece")
	assert.Contains(t, codes(found), "hands-near")
	at := slices.IndexFunc(found, func(c setup.Caution) bool { return c.Code == "short-piece" })
	assert.Contains(t, found[at].Words, "shorter than 30 in")
}

func TestTheGravestComeFirst(t *testing.T) {
	table := setup.CautionTable(&joinery.Shop{Scale: joinery.InchScale, Rules: joinery.DefaultRules(joinery.Inches)})
	weight := setup.Grave
	for i, c := range table {
		assert.Equal(t, i+1, c.Number)
		assert.LessOrEqual(t, c.Weight, weight, c.Code)
		assert.NotEmpty(t, c.Basis, c.Code)
		assert.NotContains(t, c.Words+c.Brief, "{", c.Code)
		assert.Less(t, len(c.Brief), len(c.Words), c.Code)
		assert.NotEmpty(t, c.Brief, c.Code)
		assert.LessOrEqual(t, len(c.Words), 230, "%s: a card has room for what applies, not for a wall of text", c.Code)
		assert.False(t, strings.Contains(c.Words, "  "), c.Code)
		weight = c.Weight
	}
}
