package sheets

import (
	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Letters of the fence box: the distance that is set, to be read from a metre,
// the two others, and how far a figure stands from its caption.
const (
	fenceWhole    paper.Paper = 9
	fenceFraction paper.Paper = 6.1
	asideWhole    paper.Paper = 5
	asideFraction paper.Paper = 3.6
	captionGap    paper.Paper = 2
	flushHigh     paper.Paper = 5.6 // of the word that stands for a distance
)

// captioned puts a caption over a figure.
func captioned(caption, figure paper.Block) paper.Block {
	return paper.Stack(captionGap, caption, figure)
}

// fenceBox is where the fence stands: to the near edge large or, where the
// setup book knows better, where it stood after the test cut, the computed
// number small beside it; the centre and the far edge; and what else the book
// learnt. It is as wide as it must be.
func (s Setter) fenceBox(u *deck.Setup, w paper.Paper) paper.Block {
	const pad = 1.5
	inner := w - 2*pad
	caption, number := s.fenceSet(u, inner)
	name := s.Strong(min(26, inner-number.W-captionGap), 3.4, caption)
	main := beside(name, number, captionGap)
	aside := func(name string, l measure.Length) paper.Block {
		return captioned(s.Say(inner, name), s.Built(l, asideWhole, asideFraction, inner))
	}
	set := u.SetTo()
	others := []paper.Block{aside("to centre", set.Centre), aside("to far edge", set.FarEdge)}
	if u.Bit.Outline != nil {
		others = append([]paper.Block{aside("near edge", set.NearEdge)}, others...)
	}
	if stood(u) {
		others = append(others, aside("computed", u.Fence.NearEdge))
	}
	b := main
	room := inner - main.W - 4
	right := flowed(others, room, 2.5, captionGap)
	if right.W <= room+paper.Touching && right.H <= main.H+9 {
		high := max(main.H, right.H)
		b = paper.Block{}
		b.Add(main, 0, (high-main.H)/2)
		b.Add(uprightRule(high), main.W+2, 0)
		b.Add(right, main.W+4, (high-right.H)/2)
	} else {
		b.Below(flowed(others, inner, 4, captionGap), captionGap)
	}
	for _, line := range s.keptLines(u.Kept, inner) {
		b.Below(line, 1)
	}
	return paper.Framed(b, pad, paper.Pen{Width: 0.7})
}

// stood reports whether the setup book knows where the fence stood.
func stood(u *deck.Setup) bool { return u.Kept != nil && u.Kept.FenceStood != nil }

// fenceSet is what the fence is set to, with its caption. A bit that shapes edges
// is set by its pilot: of its near edge nobody can take a measure.
func (s Setter) fenceSet(u *deck.Setup, w paper.Paper) (caption string, set paper.Block) {
	built := func(l measure.Length) paper.Block { return s.Built(l, fenceWhole, fenceFraction, w) }
	unit := ""
	if name := s.Unit(); name != "" {
		unit = ", " + name
	}
	near := u.SetTo().NearEdge
	switch forward, shaped := wording.Forward(u); {
	case stood(u) && shaped:
		return "FENCE STOOD forward of PILOT" + unit, built(forward)
	case stood(u):
		return "FENCE STOOD at NEAR edge" + unit, built(near)
	case shaped && forward == 0:
		return "FENCE and PILOT", s.Strong(w, flushHigh, "FLUSH")
	case shaped:
		return "FENCE forward of the PILOT" + unit, built(forward)
	case near < 0:
		return "NEAR edge BURIED in FENCE" + unit, built(near)
	}
	return "FENCE to NEAR edge" + unit, built(near)
}

// fenceSaid is in running text what the fence is set to, the number in letters of
// a height.
func (s Setter) fenceSaid(u *deck.Setup, p paper.Phrase, high paper.Paper) paper.Phrase {
	l, bold := s.Letters(paper.Least), s.Bold(high)
	switch forward, shaped := wording.Forward(u); {
	case shaped && forward == 0:
		p = p.Say(bold, "fence flush with the pilot").Tie(l, ",")
	case shaped:
		p = p.Say(l, "fence forward of the pilot").Keep(bold, s.Plain(forward)).Tie(l, ",")
	}
	return p.Say(l, "near edge").Keep(bold, s.Plain(u.SetTo().NearEdge))
}

// keptLines say what the setup book knows of a setup besides where its fence
// stood; none where it is not kept.
func (s Setter) keptLines(k *deck.Kept, w paper.Paper) []paper.Block {
	if k == nil {
		return nil
	}
	var all []paper.Block
	for _, line := range k.Learnt {
		all = append(all, s.Strong(w, 3.5, line))
	}
	for _, line := range k.Notes {
		all = append(all, paper.Phrase{}.Say(s.Letters(3.2), line).Set(w))
	}
	if k.Name == "" { // an entry of other work taught the fence
		return all
	}
	kept := paper.Phrase{}.Say(s.Letters(paper.Least), "kept as").Say(s.Bold(paper.Least), `"`+k.Name+`"`).Keep(s.Letters(paper.Least), "("+k.Code+")")
	return append(all, kept.Set(w))
}
