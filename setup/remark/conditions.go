package remark

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/remark/joints"
	"fencecard/setup/remark/loose"
	"fencecard/setup/remark/trade"
	"fencecard/setup/solid"
)

// condition is one thing a maker is warned of: its code, what that says, what
// stands behind it, and how it is found on one piece with all its cuts.
type condition struct {
	code  string
	says  string
	basis string
	find  func(*work) []finding
}

// conditions lists what is looked for, in the order it is told about one cut.
var conditions = []condition{
	{"short-piece", "A piece is so short that hands come near the bit.",
		"common shop rule, no regulator's figure", findShortPiece},
	{"deep-for-thickness", "A cut takes more of the stock than it should.",
		"dado to half the stock: common practice; blind mortise about 7/8: Handwork in Wood, ch. VII", findDeep},
	{"cuts-apart", "A cut leaves the piece in two, and one part is loose.",
		"worked out from the depth of the cuts", findApart},
	{"thin-floor", "Little wood is left under a cut.",
		trade.CommonPractice, findThinFloor},
	{"thin-tenon", "A tenon is thin for its stock.",
		"a third of the stock: Handwork in Wood, ch. VII; not under 1/4 in (6 mm) where that is less: " + trade.CommonPractice, findThinTenon},
	{"thin-wall", "Little wood is left beside a cut, or between two cuts.",
		trade.CommonPractice, findThinWall},
	{"thin-wall", "Little wood is left beside a cut, or between two cuts.",
		trade.CommonPractice, findThinWeb},
	{"short-grain", "Short grain beyond a cut near the end may split off.",
		"wide shoulder above a leg's mortise: Woodwork Joints", findShortGrain},
	{"cuts-meet", "Two cuts of a piece run into each other.",
		"meeting tenons in a leg mitred: Woodwork Joints", findMeeting},
	{"short-end", "A bit buried in the fence ends a stopped cut short.",
		"worked out from the round of the bit", findShortEnd},
	{"trapped-wood", "Wood runs between the bit and the fence and may be thrown.",
		"worked out from the rotation of the bit", findTrapped},
	{"lost-reference", "A cut is set from a side that an earlier cut has taken away.",
		"worked out from the order of the setups", findLostReference},
	{"narrow-bearing", "Little of the piece rides on the table or along the fence.",
		trade.CommonPractice, findNarrowBearing},
	{"long-across", "Long work is swung across the bit by its end.",
		trade.CommonPractice, findLongAcross},
	{"by-hand", "A cut by hand is out of the reach of the fence.",
		"the plan", findByHand},
	{"saw-quicker", "A saw takes deep waste off an end sooner than a bit.",
		trade.CommonPractice, findDeepWaste},
	{"steep-drop", "Work is tilted far to be dropped on, or has a short tail.",
		pivoting, findSteepDrop},
	{"early-mouth", "A dropped cut begins beyond its line at the mouth.",
		"worked out from the pivoting", findEarlyMouth},
	{"splintered-exit", "A cut across the grain follows the one that cleans its exit.",
		trade.CommonPractice, findSplinters},
	{"other-face", "Two cuts in the middle are set from opposite faces.",
		"worked out from the thickness of the stock", findOtherFace},
	{"hair-move", "A cut is wider than its bit by less than a rule shows.",
		trade.CommonPractice, findHairMove},
	{"hair-height", "Two depths at a setup are closer than a rule shows.",
		trade.CommonPractice, findHairHeight},
}

// finding is one warning before it has its code and piece.
type finding struct {
	cut  *joinery.Cut // nil: the piece as a whole
	text string
	keys []string // where in the plan to point
}

// Add writes what a deck says besides how the table is set: the joints and
// cautions of its runs, and the warnings, first of the whole plan, then of its
// cuts and then of its joints. It looks only at the plan and at the runs, however these were made.
func Add(d *deck.Deck) {
	ofJoints := joints.Check(d) // first: what a joint hides is not warned of
	d.Warnings = slices.Concat(noWood(d.Plan), joints.Unjoined(d.Plan), warn(d), ofJoints)
	Cautions(d)
}

// warn gathers the warnings about cuts: piece by piece and cut by cut in the
// order of the plan.
func warn(d *deck.Deck) []deck.Warning {
	var all []deck.Warning
	for _, w := range works(d) {
		all = append(all, w.warnings()...)
	}
	return all
}

func (w *work) warnings() []deck.Warning {
	type ranked struct {
		deck.Warning
		cut int
	}
	var found []ranked
	for _, c := range slices.Concat(slips, conditions) {
		for _, f := range c.find(w) {
			found = append(found, ranked{w.warning(c.code, f), w.indexOf(f.cut)})
		}
	}
	slices.SortStableFunc(found, func(a, b ranked) int { return cmp.Compare(a.cut, b.cut) })
	all := make([]deck.Warning, len(found))
	for i := range found {
		all[i] = found[i].Warning
	}
	return all
}

func (w *work) warning(code string, f finding) deck.Warning {
	out := deck.Warning{Code: code, Piece: w.piece.Name, Text: w.piece.Name + ": " + f.text,
		Place: w.piece.Places.At(w.piece.Place, f.keys...)}
	if f.cut != nil {
		out.Cut, out.Place = f.cut.Name, f.cut.Places.At(f.cut.Place, f.keys...)
	}
	return out
}

// indexOf returns where a cut stands in its piece, -1 for none.
func (w *work) indexOf(c *joinery.Cut) int {
	for i := range w.piece.Cuts {
		if &w.piece.Cuts[i] == c {
			return i
		}
	}
	return -1
}

// work is one piece with its cuts as the runs make them.
type work struct {
	piece  *joinery.Piece
	source *joinery.Piece // the piece this one mirrors, or nil
	unit   measure.Unit   // of the plan
	scale  measure.Scale
	cuts   []*made // in the order of the plan
	rules  joinery.Rules
	shop   *joinery.Shop
	joined bool // it, or the piece it mirrors, is joined to another
	// depths are the full depths that are cut at the deck's setups, by their numbers.
	depths map[int][]measure.Length
}

// made is a channel as the bit, and a chisel after it, leaves it.
type made struct {
	cut     *joinery.Cut
	channel joinery.Channel
	hollow  solid.Hollow   // all runs together
	box     solid.Box      // around it, inside the blank
	hollows []solid.Hollow // one for each run, with square corners where they are chiselled
	runs    []*deck.Run    // in running order; none where it is made by hand
}

// works sorts the runs of a deck by piece and channel.
func works(d *deck.Deck) []*work {
	type key struct {
		cut  *joinery.Cut
		part string // a run's channel may know a recess that the plan's does not
	}
	runs, depths := map[key][]*deck.Run{}, map[int][]measure.Length{}
	for i := range d.Setups {
		for j := range d.Setups[i].Runs {
			r := &d.Setups[i].Runs[j]
			k := key{r.Cut, r.Channel.Part}
			runs[k] = append(runs[k], r)
			depths[r.Setup] = append(depths[r.Setup], r.Channel.Depth)
		}
	}
	var all []*work
	named, joined := map[string]*joinery.Piece{}, map[string]bool{}
	for i := range d.Plan.Pieces {
		p := &d.Plan.Pieces[i]
		named[p.Name] = p
		for _, c := range p.Cuts {
			if to := c.Mates.Piece; to != "" {
				joined[to], joined[p.Name] = true, true
			}
		}
	}
	for i := range d.Plan.Pieces {
		p := &d.Plan.Pieces[i]
		w := &work{piece: p, source: named[p.MirrorOf], unit: d.Plan.Unit, scale: d.Plan.Shop.Scale, rules: d.Plan.Shop.Rules, shop: &d.Plan.Shop, joined: joined[p.Name] || joined[p.MirrorOf], depths: depths}
		for j := range p.Cuts {
			c := &p.Cuts[j]
			for _, ch := range c.Channels {
				if c.By != "" {
					w.cuts = append(w.cuts, byHand(c, ch, p.Size))
				} else if run := runs[key{c, ch.Part}]; len(run) > 0 {
					w.cuts = append(w.cuts, madeOf(run))
				}
			}
		}
		all = append(all, w)
	}
	return all
}

// madeOf gathers the runs of one channel.
func madeOf(runs []*deck.Run) *made {
	first := runs[0]
	size := first.Piece.Size
	m := &made{cut: first.Cut, channel: first.Channel, runs: runs,
		hollow: solid.Of(first.Channel, size, first.Step.Bit.True())}
	m.hollow.Section = first.Channel.Section
	m.box = m.hollow.Box(size)
	if first.Channel.EndToEnd(size) {
		m.hollows = []solid.Hollow{m.hollow} // no round ends, so the runs together are one block
		return m
	}
	for _, r := range runs {
		run := loose.Room(r)
		if first.Cut.Square {
			run.Radius = 0 // the chisel takes the corners out
		}
		m.hollows = append(m.hollows, run)
	}
	return m
}
