package sheets

import (
	"slices"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

// tickSide is how wide a box to tick is.
const tickSide paper.Paper = 5

// startChecks are looked at before a setup's first cut (common practice, no
// source). The sides are pencilled before all else.
var startChecks = []string{
	"0: sides pencilled", "unplugged", "collet tight", "fence, height locked", "speed",
	"bit turned by hand", "guard", "switch in reach",
}

// checks are the start checks, each with a box, the trial, and a line to sign.
func (s Setter) checks(u *deck.Setup, w paper.Paper) paper.Block {
	return flowed(s.checkItems(u, w), w, checkGap, 1)
}

// checkGap is the space between checks on a line.
const checkGap paper.Paper = 2.2

func (s Setter) checkItems(u *deck.Setup, w paper.Paper) []paper.Block {
	items := []paper.Block{s.Strong(w, paper.Least, "START CHECKS")}
	for _, check := range startChecks {
		items = append(items, s.ticked(check, w))
	}
	if len(u.Marks) > 0 {
		items = append(items, s.ticked("stops clamped", w))
	}
	items = append(items, s.trial(u, w)...)
	if s.bare {
		return items
	}
	for _, by := range []string{"set by", "checked by", "date"} {
		items = append(items, s.asked(by, 14))
	}
	return items
}

// ticked is a box to tick and a few words.
func (s Setter) ticked(words string, w paper.Paper) paper.Block {
	if s.bare {
		return s.Say(w, "· "+words)
	}
	b := boxes(1, tickSide)
	text := s.Say(w-tickSide-1.2, words)
	high := max(b.H, text.H)
	var all paper.Block
	all.Add(b, 0, (high-b.H)/2)
	all.Add(text, tickSide+0.8, (high-text.H)/2)
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
// box for what it is.
func (s Setter) trial(u *deck.Setup, w paper.Paper) []paper.Block {
	const boxWide, boxHigh = 14, 6
	var items []paper.Block
	measure := func(what string, l joinery.Length) {
		words := paper.Phrase{}
		if len(items) == 0 {
			words = words.Say(s.Bold(paper.Least), "TRIAL in scrap:")
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
	shaped := func(r deck.Run) bool { return r.Channel.Section.Shaped() }
	switch nibbled := slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Nibble != nil }); {
	case slices.ContainsFunc(u.Runs, shaped):
		section := deck.SectionAt(u.Runs[0].Step, u.Runs[0].Channel)
		full := u.Heights[len(u.Heights)-1]
		measure("at the full height, over the face", s.Scale.Round(joinery.FromMillimetres(section.Reach(full))))
	case u.Fence.NearEdge > 0 && !nibbled:
		measure("to slot", u.Fence.NearEdge)
		measure("wide", u.Bit.True())
	default: // of an end nibbled away no slot remains
		measure("to shoulder", u.Fence.FarEdge)
	}
	if len(u.Heights) > 0 {
		where := "at the first height, deep"
		if slices.ContainsFunc(u.Runs, shaped) {
			where = "at the first height, up the edge"
		}
		if u.Recessed() {
			where = "in the trial slot of the head, at the first height, deep"
		}
		measure(where, u.Heights[0])
	}
	for i := range u.Runs {
		if thick, _, ok := remark.TrialTenon(&u.Runs[i]); ok {
			measure("tenon tried in its mortise", thick)
			break
		}
	}
	return items
}
