package remark_test

import (
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// situation is a piece with one cut as an instructor would look at it: what must
// be said of its last run, and what must not.
type situation struct {
	name      string
	size, cut string
	change    func(*joinery.Plan)
	must, not string // codes of cautions; +code: of warnings
}

func situations(t *testing.T) []situation {
	wood := func(name string) func(*joinery.Plan) {
		return func(p *joinery.Plan) { p.Pieces[0].Wood, _, _ = timber.FindWood(name) }
	}
	bit := func(d string, change func(*joinery.Bit)) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			b := workpiece.BitOf(workpiece.In(t, d))
			b.Plunges, b.Shank = joinery.Yes, workpiece.In(t, "1/2")
			if change != nil {
				change(&b)
			}
			p.Shop.Bits = []joinery.Bit{b}
		}
	}
	cut := func(change func(*joinery.Cut)) func(*joinery.Plan) {
		return func(p *joinery.Plan) { change(&p.Pieces[0].Cuts[0]) }
	}
	raises := func(p *joinery.Plan) { p.Shop.Raises = true }
	blocks := func(p *joinery.Plan) { p.Shop.Stops = joinery.Blocks }
	gauge := func(p *joinery.Plan) { p.Shop.Cross.With = joinery.Gauge }
	bored := cut(func(c *joinery.Cut) { c.Bored = true })
	either := cut(func(c *joinery.Cut) { c.Fence.Either = true })
	down := bit("1/2", func(b *joinery.Bit) { b.Kind = joinery.DownCut })
	unsaid := bit("1/2", func(b *joinery.Bit) { b.Plunges = joinery.NotSaid })
	two := func(fs ...func(*joinery.Plan)) func(*joinery.Plan) {
		return func(p *joinery.Plan) {
			for _, f := range fs {
				f(p)
			}
		}
	}
	return []situation{
		{"a groove along a rail", "30 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", nil, "harmful-dust trial-cut", "start-stopped guided swings comes-through edge-cut"},
		{"the same in a softwood", "30 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", wood("ponderosa pine"), "dust", "harmful-dust"},
		{"in a softwood that harms", "30 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", wood("western redcedar"), "harmful-dust", "dust"},
		{"in plywood", "30 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", wood("plywood"), "harmful-dust", "dust"},
		{"a groove in two heights", "30 3 1_1/2", "groove g bottom 1/2 1/2:front - 5/8", nil, "passes", "fence-order"},
		{"a groove wider than the bit", "30 3 1_1/2", "groove g bottom 3/4 1/2:front - 1/4", bit("1/2", nil), "fence-order", "edge-cut"},
		{"a groove near the far edge", "30 3 1_1/2", "groove g bottom 1/2 2_3/8:front - 1/4", nil, "thin-wall +thin-wall", "trapped-wood"},
		{"a groove at the far edge", "30 3 1_1/2", "groove g bottom 1/2 2_1/2:front - 1/4", nil, "trapped-wood +trapped-wood", "passes harmful-dust trial-cut edge-cut"},
		{"a mortise in the middle of a rail", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 1", nil, "start-stopped end-stopped", "steep-drop start-hole breaks-out +steep-drop"},
		{"a mortise with a tail of 3 in", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 1-3_1/2:left 5/8", nil, "steep-drop start-stopped +steep-drop", "breaks-out"},
		{"the same, either side to the fence", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 1-3_1/2:left 5/8", either, "start-stopped", "steep-drop +steep-drop"},
		{"the same, bored first", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 1-3_1/2:left 5/8", bored, "bored-start end-stopped", "start-stopped steep-drop start-hole early-mouth +steep-drop +early-mouth"},
		{"the same, the bit raised into it", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 1-3_1/2:left 5/8", raises, "raised-bit end-stopped", "start-stopped steep-drop bored-start +steep-drop"},
		{"a mortise with a long tail, the shop raising", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 5/8", raises, "start-stopped", "raised-bit"},
		{"a tilt of 21 degrees over a tail that hands can hold", "40 3 3", "mortise m bottom 1/2 1_1/4:front 1-6:left 2", nil, "steep-drop +steep-drop", "bored-start"},
		{"a deep mortise with a middling tail", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 4-8:left 1_1/4", nil, "start-stopped early-mouth +early-mouth", "steep-drop +steep-drop"},
		{"a shallow one with a long tail", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 20-24:left 1/4", nil, "start-stopped", "early-mouth steep-drop +early-mouth"},
		{"a deep mortise at the very end that leads", "30 3 3", "mortise m bottom 1/2 1_1/4:front 20-29_15/16:left 2", nil, "start-stopped", "steep-drop"},
		{"a mortise that breaks out of the end", "30 3 3", "mortise m bottom 1/2 1_1/4:front 8-29_63/64:left 2", nil, "breaks-out +early-mouth", "early-mouth"},
		{"a bit not known to plunge", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 1", unsaid, "start-hole start-stopped", "bored-start"},
		{"a bit not known to plunge, fed in", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-30:left 1", unsaid, "end-stopped", "start-hole start-stopped"},
		{"a bit not known to plunge, bored", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 1", two(unsaid, bored), "bored-start", "start-hole"},
		{"a down-cut bit in a mortise", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 1", down, "down-cut-blind start-stopped", "swings"},
		{"a down-cut bit that is only lifted", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-30:left 1", down, "down-cut-blind end-stopped", "start-stopped"},
		{"a down-cut bit right through", "30 3 1_1/2", "groove m bottom 1/2 1_1/4:front - 1", down, "passes", "down-cut-blind"},
		{"a wide mortise, each of its starts bored", "30 3 1_1/2", "mortise m bottom 3/4 1_1/4:front 10-14:left 1", two(bit("1/2", nil), bored), "bored-start fence-order end-stopped", "start-stopped start-hole"},
		{"a tenon on a rail of five feet", "60 3/4 3", "tenon n left 1 front:3/16 back:3/16", nil, "guided swings +long-across", "across-grain"},
		{"one on a rail of three", "36 3/4 3", "tenon n left 1 front:3/16 back:3/16", nil, "guided swings", "+long-across"},
		{"a mortise five times as deep as the bit is thick", "30 3 3", "mortise m bottom 1/4 1_1/4:front 10-14:left 1_1/4", bit("1/4", nil), "start-stopped", "slender-bit"},
		{"a deeper one", "30 3 3", "mortise m bottom 1/4 1_1/4:front 10-14:left 1_17/64", bit("1/4", nil), "slender-bit start-stopped", "stands-far"},
		{"the same bored first", "30 3 3", "mortise m bottom 1/4 1_1/4:front 10-14:left 1_17/64", two(bit("1/4", nil), bored), "slender-bit bored-start", "start-stopped"},
		{"a dado dropped on, across a long leg", "28 1_3/4 1_3/4", "dado d bottom 1/2 4:left 1/2-1_1/4:front 1/4", bit("1/2", nil), "start-stopped swings", "guided across-grain"},
		{"lifted off in a shop of blocks", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 1", blocks, "end-stopped", "guided"},
		{"a mortise right through", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 1_1/2", nil, "comes-through start-stopped", "cuts-apart"},
		{"one a division short of through", "30 3 1_1/2", "mortise m bottom 1/2 1_1/4:front 10-14:left 1_31/64", nil, "start-stopped +deep-for-thickness", "comes-through"},
		{"a groove right through", "30 3 1_1/2", "groove g bottom 1/2 1/2:front - 1_1/2", nil, "cuts-apart +cuts-apart", "comes-through passes trial-cut harmful-dust"},
		{"an edge right through", "30 3 1_1/2", "rabbet r bottom front 1/2 1_1/2", nil, "comes-through edge-cut", "cuts-apart trapped-wood"},
		{"a rabbet as wide as the bit", "30 3 1_1/2", "rabbet r bottom front 1/2 1/2", bit("1/2", nil), "edge-cut", "fence-order trapped-wood"},
		{"a rabbet narrower than the bit", "30 3 1_1/2", "rabbet r bottom front 3/8 1/2", bit("1/2", nil), "edge-cut", "fence-order"},
		{"a wide rabbet", "30 3 1_1/2", "rabbet r bottom front 3/4 1/2", bit("1/2", nil), "fence-order", "edge-cut"},
		{"a tenon on a narrow rail", "30 3/4 3", "tenon n left 1 front:3/16 back:3/16", nil, "guided nibbled swings", "across-grain start-stopped"},
		{"its shoulder shorter than the bit", "30 3/4 3", "tenon n left 3/8 front:3/16 back:3/16", nil, "guided edge-cut", "nibbled"},
		{"pushed with a gauge", "30 3/4 3", "tenon n left 1 front:3/16 back:3/16", gauge, "guided nibbled", "start-stopped"},
		{"a tenon on a wide panel", "30 3/4 12", "tenon n left 1 front:3/16 back:3/16", nil, "across-grain nibbled", "guided swings start-stopped"},
		{"a dado in a wide board", "24 10 3/4", "dado d bottom 3/4 6:left - 1/4", nil, "across-grain", "guided start-stopped swings"},
		{"a dado in a narrow board", "24 5 3/4", "dado d bottom 3/4 6:left - 1/4", nil, "guided swings open-fence", "across-grain"},
		{"a dado in a narrow short board", "16 5 3/4", "dado d bottom 3/4 6:left - 1/4", nil, "guided", "swings across-grain"},
		{"a dado across a long leg", "28 1_3/4 1_3/4", "dado d bottom 3/4 4:left - 1/4", nil, "guided swings +narrow-bearing", "across-grain"},
		{"a dado stopped at the front", "24 10 3/4", "dado d bottom 3/4 6:left 1/2-10:front 1/4", nil, "harmful-dust", "guided trapped-wood"},
		{"a short piece", "11 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", nil, "short-piece +short-piece", "tall-piece"},
		{"a foot long", "12 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", nil, "trial-cut", "short-piece +short-piece"},
		{"a small piece", "5 2 1", "groove g bottom 1/2 1/2:front - 1/4", nil, "short-piece hands-near", "guided"},
		{"a small piece, dropped on", "8 2 1", "mortise g bottom 1/2 1/2:front 1-5:left 1/4", nil, "short-piece hands-near start-stopped", "guided"},
		{"a board on edge", "30 3/4 6", "groove g bottom 1/4 1/4:front - 1/4", nil, "tall-piece", "guided"},
		{"a board on edge, dropped on", "30 3/4 6", "groove g bottom 1/4 1/4:front 2-28:left 1/4", nil, "tall-piece start-stopped", "guided"},
		{"a thick short block on end", "3 8 10", "groove g bottom 1/2 1/2:front - 1/4", nil, "tall-piece short-piece", "start-stopped"},
		{"a board no more than twice as high", "30 3 6", "groove g bottom 1/4 1/2:front - 1/4", nil, "harmful-dust", "tall-piece"},
		{"a wide panel", "30 20 3/4", "groove g bottom 1/2 1/2:front - 1/4", nil, "support", "tall-piece swings"},
		{"one that the table carries", "30 16 3/4", "groove g bottom 1/2 1/2:front - 1/4", nil, "harmful-dust", "support"},
		{"work longer than the fence", "60 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", func(p *joinery.Plan) {
			p.Shop.Fence = joinery.FenceReach{Infeed: 24 * measure.Inch, Outfeed: 24 * measure.Inch}
		}, "support", "guided"},
		{"a large bit", "30 8 1_1/2", "groove g bottom 1_1/4 1/2:front - 1/4", bit("1 1/4", nil), "large-bit", "fence-order"},
		{"a bit of an inch", "30 8 1_1/2", "groove g bottom 1 1/2:front - 1/4", bit("1", nil), "trial-cut", "large-bit"},
		{"two shanks a hair apart", "30 3 1_1/2", "groove g bottom 1/2 1/2:front - 1/4", two(bit("1/2", nil), func(p *joinery.Plan) {
			p.Shop.Bits = append(p.Shop.Bits, joinery.Bit{Name: "other", Diameter: workpiece.In(t, "1/8"), Shank: 12 * measure.Millimetre})
		}), "shank-and-collet", "large-bit"},
		{"a short end over the opening of the fence", "5 4 3/4", "rabbet r bottom front 3/8 1/4", nil, "open-fence edge-cut short-piece", "guided"},
		{"a lap at a wide end", "30 8 3/4", "lap l bottom left 3/8 3/8", bit("1/2", nil), "across-grain edge-cut", "guided nibbled"},
		{"a lap at a narrow end", "30 3 3/4", "lap l bottom left 3/8 3/8", bit("1/2", nil), "guided edge-cut", "across-grain"},
		{"a long lap", "30 3 3/4", "lap l bottom left 3 3/8", bit("1/2", nil), "guided nibbled passes", "fence-order trapped-wood"},
		{"a plate let in", "30 3 1_1/2", "mortise p bottom 1 1:front 10-12:left 1/8", nil, "start-stopped end-stopped", "early-mouth steep-drop"},
	}
}

// deckIn makes the deck of a situation in a shop of many bits.
func (s situation) deck(t *testing.T) *deck.Deck {
	t.Helper()
	plan := workpiece.PieceFrom(t, s.size, s.cut)
	plan.Shop.Rules, plan.Shop.Fence.Reach = joinery.DefaultRules(measure.Inches), 30*measure.Inch
	for i := range plan.Shop.Bits {
		plan.Shop.Bits[i].Plunges, plan.Shop.Bits[i].Cutting = joinery.Yes, 0
	}
	if s.change != nil {
		s.change(plan)
	}
	require.Empty(t, plan.Pieces[0].LayAll(plan.Shop.Scale))
	d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
	require.NoError(t, err)
	return d
}

func TestSituations(t *testing.T) {
	all := situations(t)
	assert.GreaterOrEqual(t, len(all), 60)
	for _, s := range all {
		t.Run(s.name, func(t *testing.T) {
			d := s.deck(t)
			runs := d.Setups[len(d.Setups)-1].Runs
			said := codes(runs[len(runs)-1].Cautions)
			for _, w := range d.Warnings {
				said = append(said, "+"+w.Code)
			}
			for _, code := range strings.Fields(s.must) {
				assert.Contains(t, said, code, "must be said")
			}
			for _, code := range strings.Fields(s.not) {
				assert.NotContains(t, said, code, "must not be said")
			}
		})
	}
}

// contradictions are words that cannot both be obeyed at one run.
var contradictions = [][2]string{
	{`[Dd]o not (run|make this run)`, `featherboard|scrap|backing board|lower|clear the chips|trial|facing`},
	{`lower the work|lower onto|lower level`, `featherboard|hold the work down`},
	{`lower the work onto`, `raise the turning bit|lower the work level`},
	{`at the mark`, `front stop`},
	{`buried in the fence`, `flush with the face`},
	{`push block`, `push (the work|it) with|block or gauge behind`},
	{`to the mitre gauge`, `a square block`},
	{`featherboard`, `handle`},
	{`dust of`, `that of softwoods`},
	{`not known to cut`, `lower the work level`},
	{`tail (against|at) the back stop`, `hold it square`},
	{`Several fence distances|only away from the bit`, `bit is buried in the fence`},
}

// TestNoCautionContradictsAnother reads every pair of cautions that stand at one
// run, in the situations and in the real plans.
func TestNoCautionContradictsAnother(t *testing.T) {
	decks := []*deck.Deck{}
	for _, s := range situations(t) {
		decks = append(decks, s.deck(t))
	}
	for _, plan := range workpiece.RealPlans(t) {
		d, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
		require.NoError(t, err)
		decks = append(decks, d)
	}
	patterns := make([][2]*regexp.Regexp, len(contradictions))
	for i, c := range contradictions {
		patterns[i] = [2]*regexp.Regexp{regexp.MustCompile(c[0]), regexp.MustCompile(c[1])}
	}
	pairs := map[[2]string]bool{}
	hit := make([][2]bool, len(patterns))
	for _, d := range decks {
		for _, s := range d.Setups {
			for _, r := range s.Runs {
				for _, a := range r.Cautions {
					assert.LessOrEqual(t, len(a.Words), 400, a.Code)
					for i, p := range patterns {
						hit[i][0] = hit[i][0] || p[0].MatchString(a.Words)
						hit[i][1] = hit[i][1] || p[1].MatchString(a.Words)
					}
					for _, b := range r.Cautions {
						if a.Code == b.Code {
							continue
						}
						pair := []string{a.Code, b.Code}
						slices.Sort(pair)
						pairs[[2]string(pair)] = true
						for i, p := range patterns {
							assert.False(t, p[0].MatchString(a.Words) && p[1].MatchString(b.Words), "%s of %s: %s: %s / %s: %s (%v)",
								r.Cut.Name, r.Piece.Name, a.Code, a.Words, b.Code, b.Words, contradictions[i])
						}
					}
				}
			}
		}
	}
	assert.Greater(t, len(pairs), 150, "pairs that stand together somewhere")
	for i, h := range hit {
		assert.True(t, h[0] && h[1], "nothing has both sides of %v", contradictions[i])
	}
}
