package sheets

import (
	"fmt"
	"slices"

	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/sheets/tick"
	"fencecard/output/wording"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// startChecks are what is looked at before a setup's first cut (common practice,
// no source), each with a box. The collet and the speed stay with the bit.
func startChecks(d *deck.Deck, i int) []string {
	all := []string{"unplugged"}
	if !d.BitStays(i) {
		all = append(all, "collet tight", "speed")
	}
	all = append(all, "fence, height locked", "bit turned by hand", "guard", "foot switch")
	if len(d.Setups[i].Marks) > 0 {
		all = append(all, "stops clamped")
	}
	return all
}

// checks are the start checks, each with a box, and the trial.
func (s Setter) checks(d *deck.Deck, i int, w paper.Paper, ends bool) paper.Block {
	return flowed(s.checkItems(d, i, w, ends), w, checkGap, 0.8)
}

// checkGap is the space between checks on a line.
const checkGap paper.Paper = 1.8

// checkItems are the checks one by one, with or without where a trial begins and ends.
func (s Setter) checkItems(d *deck.Deck, i int, w paper.Paper, ends bool) []paper.Block {
	items := []paper.Block{s.Strong(w, paper.Least, "CHECKS")}
	for _, check := range startChecks(d, i) {
		items = append(items, s.ticked(check, w))
	}
	trial, least := s.trial(d, i, w)
	var signed []paper.Block
	if !s.bare && s.signed(w).W == 0 {
		for _, by := range signatures {
			signed = append(signed, s.asked(by, 14))
		}
	}
	if !ends {
		trial = trial[:least]
	}
	return slices.Concat(items, trial, signed)
}

// signatures are asked for at every setup.
var signatures = []string{"set by", "checked by", "date"}

// signed has a line to write on for who set the table and who checked it, to
// stand beside the name of the bit; nothing where the paper is too narrow.
func (s Setter) signed(w paper.Paper) paper.Block {
	const high, wide = 5.6, 32
	if s.bare || s.Frame.W < wideRow {
		return paper.Block{}
	}
	var b paper.Block
	for i, by := range signatures {
		y := paper.Paper(i) * high
		text := s.Say(w, by)
		b.Add(text, 0, y+high-text.H)
		b.Add(indented(rule(wide-text.W-1.2, paper.Thin), text.W+1.2), 0, y+high-0.5)
	}
	return b
}

// ticked is a box to tick and a few words.
func (s Setter) ticked(words string, w paper.Paper) paper.Block {
	if s.bare {
		return s.Say(w, "· "+words)
	}
	b := tick.Boxes(1, tick.Side)
	text := s.Say(w-tick.Side-1.2, words)
	high := max(b.H, text.H)
	var all paper.Block
	all.Add(b, 0, (high-b.H)/2)
	all.Add(text, tick.Side+0.8, (high-text.H)/2)
	return all
}

// asked is a few words and a line to write on.
func (s Setter) asked(words string, room paper.Paper) paper.Block {
	b := s.Say(s.Frame.W, words)
	line := blank(room)
	high := max(b.H, line.H)
	var all paper.Block
	all.Add(b, 0, (high-b.H)/2)
	all.Add(line, b.W+1.2, (high-line.H)/2)
	return all
}

// trial says what to measure of a cut in scrap, what it should be, and has a
// box for what it is. From the item counted by least on, it is where a cut by the
// first pair of marks begins and ends.
func (s Setter) trial(d *deck.Deck, i int, w paper.Paper) (items []paper.Block, least int) {
	u := &d.Setups[i]
	fits, stays := wording.FitTrials(d, u), d.BitStays(i)
	const boxWide, boxHigh = 12, 5
	name := "TRIAL in scrap:"
	if u.Recessed() {
		name = "TRIAL:" // in that of the earlier cut, as what to mind says
	}
	note := func(what string, l measure.Length) {
		words := paper.Phrase{}
		if len(items) == 0 {
			words = words.Say(s.Bold(paper.Least), name)
		}
		if s.bare {
			words = words.Say(s.Letters(paper.Least), "·") // no box parts it from the one before
		}
		text := words.Say(s.Letters(paper.Least), what).Keep(s.Bold(3.2), s.Plain(l)).Set(w - boxWide - 2)
		if s.bare {
			items = append(items, text)
			return
		}
		box := paper.Figure("box", boxWide, boxHigh, func(c paper.Canvas, at paper.Point) {
			c.Stroke(paper.Pen{Width: 0.35}, paper.Box{X: at.X, Y: at.Y, W: boxWide, H: boxHigh}.Path()...)
		})
		items = append(items, beside(text, box, 1.5))
	}
	shaped := slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Channel.Section.Shaped() })
	switch nibbled := slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Nibble != nil }); {
	case shaped:
		section := deck.SectionAt(u.Runs[0].Step, u.Runs[0].Channel)
		full := u.Heights[len(u.Heights)-1]
		note("at the full height, over the face", s.Scale.Round(measure.FromMillimetres(section.Reach(full))))
		note("up the edge", full)
	case u.Fence.NearEdge > 0 && !nibbled:
		if widens := !slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Step.Position < 2 }); widens && len(fits) > 0 {
			note("to far wall", u.Fence.FarEdge) // on the scrap of the setup before, where no near wall is left
		} else {
			note("side to wall", u.Fence.NearEdge)
		}
		if len(fits) == 0 || !stays { // what the bit cuts was measured when it was fitted
			note("wide", u.Bit.True())
		}
	case nibbled: // no near wall remains
		note("end to shoulder", u.Fence.FarEdge)
	default:
		note("side to shoulder", u.Fence.FarEdge)
	}
	if len(u.Heights) > 0 && !shaped {
		note("deep", u.Heights[0])
	}
	tenons := trialTenons(u)
	for _, t := range tenons {
		what := "tenon"
		if len(tenons) > 1 {
			what += " of " + t.run.Number()
		}
		if t.Fitted < t.AsSet {
			rungs := wording.RungNames(u, t.run)
			what += fmt.Sprintf(" %s at height %d: raise a hair, cut both faces, until it slides in by hand, about",
				s.Scale.Read(t.AsSet), rungs[len(rungs)-1])
		} else {
			what += ", tried in its mortise"
		}
		note(what, t.Fitted)
	}
	unknown := len(tenons) == 0 && slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Cut.Kind.Enters && r.Joint == nil })
	if unknown && w >= wideRow { // smaller paper has no line to spare for it
		items = append(items, s.Say(w, "tenon: try it in the real mortise"))
	}
	for _, fit := range fits {
		note(fit.Says, fit.Width)
	}
	least = len(items)
	if len(u.Marks) > 0 && !shaped {
		for i, m := range []*deck.PairMark{u.Marks[0].Start, u.Marks[0].Stop} {
			what := [2]string{"begins from ", "ends from "}[i]
			if len(u.Marks) > 1 {
				what = u.Marks[0].Letter + " " + what
			}
			switch {
			case m == nil:
			case m.Lead:
				note(what+"lead", m.Line)
			case m.Tail:
				note(what+"tail", m.TailBeforeEdge)
			}
		}
	}
	return items, least
}

// trialTenon is a tenon that is tried, at the first run that cuts it.
type trialTenon struct {
	remark.Tenon
	run *deck.Run
}

// trialTenons are the tenons of different thickness that a setup cuts: what fits one
// mortise says nothing of another.
func trialTenons(u *deck.Setup) []trialTenon {
	var all []trialTenon
	for i := range u.Runs {
		tenon, ok := remark.TrialTenon(&u.Runs[i])
		if ok && !slices.ContainsFunc(all, func(t trialTenon) bool { return t.Tenon == tenon }) {
			all = append(all, trialTenon{tenon, &u.Runs[i]})
		}
	}
	return all
}
