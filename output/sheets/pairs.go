package sheets

import (
	"slices"

	"fencecard/joinery/measure"
	"fencecard/output/paper"
	"fencecard/output/views"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// Letters of a mark that is set.
const (
	setWhole    paper.Paper = 8.4
	setFraction paper.Paper = 5.3

	underFigure paper.Paper = 1.9 // to the words below: with their rise 2 mm and more of white
	overFigure  paper.Paper = 2.3 // to the words above, which hang lower
)

// abreastMarks is how wide a panel must be for start and stop side by side.
const abreastMarks paper.Paper = 112

// mostSet is how much of a small card what is set may take; beyond it the back stop
// has a line.
const mostSet = 0.55

// threeAbreast is the same with the back stop between them.
const threeAbreast paper.Paper = 165

// pairGroups are the runs of a setup under their pairs, and the runs of every row.
func (s Setter) pairGroups(u *deck.Setup, mind wording.Mind, w paper.Paper) (groups []group, rows [][]*deck.Run) {
	climb := -1
	for _, runs := range wording.Groups(u) {
		g := group{head: s.pairPanel(u, runs.Pair, runs.Runs, mind, w)}
		if s.Blocks && runs.Climb != climb {
			g.head = paper.Stack(1, s.Strong(w, 3.2, wording.BlocksFor(u, runs.Climb)), g.head)
			climb = runs.Climb
		}
		for _, row := range together(u, runs.Runs, mind) {
			if b := s.runRow(u, row, mind, w); len(row) == 1 || b.H < s.body().H/3 {
				g.rows, rows = append(g.rows, b), append(rows, row)
				continue
			}
			for _, r := range row {
				g.rows, rows = append(g.rows, s.runRow(u, []*deck.Run{r}, mind, w)), append(rows, []*deck.Run{r})
			}
		}
		groups = append(groups, g)
	}
	return groups, rows
}

// pairPanel is one pair of marks: where they stand on the fence, the number to
// set for each, and the other ways to measure it.
func (s Setter) pairPanel(u *deck.Setup, p *deck.Pair, runs []*deck.Run, mind wording.Mind, w paper.Paper) paper.Block {
	if p == nil {
		return paper.Framed(wide(s.Strong(w-3, paper.Least, wording.NoMarks(u)), w-3), 0.8, paper.Thin)
	}
	const pad = 1.2
	inner := w - 2*pad
	letter := black(p.Letter, s.Bold(7), max(10, s.Bold(7).Width(p.Letter)+4), 10)
	var b paper.Block
	b.Add(letter, -pad, -pad)
	b.Add(views.FenceFromAbove(s.Setter, u, p, runs[0], inner-2*letter.W), letter.W, 0)
	behind := s.behind(p, runs[0], inner >= threeAbreast)
	asides := s.aboutStops(p, runs[0], func(marking wording.Marking, _ *deck.PairMark) string {
		return marking.OffFence(s.Reach, runs[0])
	})
	under := inner >= abreastMarks // the other ways have a line there
	sets, gap := s.setOf(u, p, runs[0], behind, !under, inner), paper.Paper(1)
	if inner < abreastMarks {
		gap = 2
		if behind != nil && sets.H > s.body().H*mostSet { // the runs need the room
			sets = s.setOf(u, p, runs[0], nil, true, inner)
			asides = s.aboutStops(p, runs[0], func(marking wording.Marking, m *deck.PairMark) string {
				return marking.StopLine(m, s.Plain, s.Reach, runs[0])
			})
		}
	}
	b.Below(sets, gap)
	if under {
		off := slices.Concat(asides...)
		all := slices.Concat(off, s.otherMarkings(p, runs[0], wording.Marking.OthersInWords))
		if short := slices.Concat(off, s.otherMarkings(p, runs[0], wording.Marking.Others)); len(all.Lines(inner)) > len(short.Lines(inner)) {
			all = short
		}
		asides = []paper.Phrase{all}
	}
	asides = append(asides, s.weighed(mind.Pairs[p.Letter])...)
	for i, line := range asides {
		gap := paper.Paper(0.5)
		if i == 0 {
			gap = underFigure
		}
		b.Below(line.Set(inner), gap)
	}
	return paper.Framed(sized(b, inner, 0), pad, paper.Pen{Width: 0.5})
}

// setOf is what is set of a pair: start and stop side by side where there is room, with
// the back stop between them or below.
func (s Setter) setOf(u *deck.Setup, p *deck.Pair, r *deck.Run, behind func(w paper.Paper) paper.Block, others bool, w paper.Paper) paper.Block {
	start, stop := s.markSet("START", false, u, p.Start, r, others), s.markSet("STOP", true, u, p.Stop, r, others)
	if w >= abreastMarks {
		start, stop = s.markUnder("START", false, u, p.Start, r), s.markUnder("STOP", true, u, p.Stop, r)
	}
	switch {
	case behind != nil && w >= threeAbreast:
		return abreast(w, start, behind, stop)
	case behind != nil && w >= abreastMarks:
		return ruled(w, abreast(w, start, stop), behind(w))
	case w >= abreastMarks:
		return abreast(w, start, stop)
	case behind != nil:
		return ruled(w, start(w), behind(w), stop(w))
	}
	return ruled(w, start(w), stop(w))
}

// ruled sets blocks under each other with a rule between.
func ruled(w paper.Paper, all ...paper.Block) paper.Block {
	b := all[0]
	for _, more := range all[1:] {
		b.Below(rule(w, paper.Thin), 1)
		b.Below(more, 2)
	}
	return b
}

// otherMarkings are the other ways to measure both marks of a pair, in short or in words.
func (s Setter) otherMarkings(p *deck.Pair, r *deck.Run, say func(wording.Marking, *deck.PairMark, func(measure.Length) string) string) paper.Phrase {
	var all paper.Phrase
	for i, m := range []*deck.PairMark{p.Start, p.Stop} {
		if m == nil {
			continue
		}
		if others := say(wording.MarkingOf(r, i == 1, m.Guide, s.Blocks), m, s.Plain); others != "" {
			all = all.Say(s.Letters(paper.Least), [2]string{"START", "STOP"}[i]+" "+others+".")
		}
	}
	return all
}

// weighed says some cautions in a paragraph.
func (s Setter) weighed(cautions []deck.Caution) []paper.Phrase {
	var p paper.Phrase
	for _, c := range cautions {
		p = p.Say(s.Bold(paper.Least), c.Weight.String()).Say(s.Letters(paper.Least), c.Brief)
	}
	if p == nil {
		return nil
	}
	return []paper.Phrase{p}
}

// aboutStops are the lines on the stops of a pair.
func (s Setter) aboutStops(p *deck.Pair, r *deck.Run, say func(wording.Marking, *deck.PairMark) string) []paper.Phrase {
	var all []paper.Phrase
	for i, m := range []*deck.PairMark{p.Start, p.Stop} {
		if m == nil {
			continue
		}
		if line := say(wording.MarkingOf(r, i == 1, m.Guide, s.Blocks), m); line != "" {
			all = append(all, paper.Phrase{}.Say(s.Bold(paper.Least), line))
		}
	}
	return all
}

// abreast sets what is set of a pair side by side.
func abreast(w paper.Paper, sets ...func(w paper.Paper) paper.Block) paper.Block {
	const gap = 4
	column := (w - gap*paper.Paper(len(sets)-1)) / paper.Paper(len(sets))
	var b paper.Block
	for i, set := range sets {
		b.Add(set(column), paper.Paper(i)*(column+gap), 0)
	}
	for i := range len(sets) - 1 {
		b.Add(uprightRule(b.H-2), paper.Paper(i+1)*(column+gap)-gap/2, 2)
	}
	return b
}

// behind returns what sets the back stop of a drop whose start is set by a mark, in
// figures as large as the mark's, for no work is lowered without it; nil where the
// start is that stop, or none is.
func (s Setter) behind(p *deck.Pair, r *deck.Run, abreast bool) func(w paper.Paper) paper.Block {
	if p.Start == nil {
		return nil
	}
	marking, asked := wording.MarkingOf(r, false, p.Start.Guide, s.Blocks).Behind()
	if !asked {
		return nil
	}
	return func(w paper.Paper) paper.Block {
		head := s.titled(stopSign(), "BACK STOP")
		if abreast {
			return s.wordsUnder(head, marking, &p.Start.Mark, w)
		}
		return s.wordsBeside(head, marking, &p.Start.Mark, "", w)
	}
}

// markUnder returns what sets a mark in a narrow column: what is put there beside
// its name, under it the number and what it is for.
func (s Setter) markUnder(name string, stop bool, u *deck.Setup, m *deck.PairMark, r *deck.Run) func(w paper.Paper) paper.Block {
	if m == nil {
		return s.markSet(name, stop, u, m, r, false)
	}
	return func(w paper.Paper) paper.Block {
		marking := wording.MarkingOf(r, stop, m.Guide, s.Blocks)
		return s.wordsUnder(s.flagged(name, marking), marking, &m.Mark, w)
	}
}

// wordsUnder sets what is put there beside the name of a mark, and under both the
// number and what it is for.
func (s Setter) wordsUnder(head paper.Block, marking wording.Marking, m *deck.Mark, w paper.Paper) paper.Block {
	number := s.Built(marking.Length(m), setWhole, setFraction, w)
	set, room := s.Strong(w-head.W-3, 3.2, marking.Set), w-number.W-captionGap
	words := func(room paper.Paper) paper.Block {
		return paper.Stack(0.4, s.Say(room, marking.For), s.Say(room, marking.From))
	}
	// The number is read right behind its name.
	b, x := head, head.W+3
	y := max(head.H, set.H+0.3) + overFigure
	if room < leastBeside {
		b.Add(number, 0, y)
		b.Add(set, x, 0.3)
		b.Below(words(w), underFigure)
		return b
	}
	said := words(room)
	high := max(number.H, said.H)
	b.Add(number, 0, y+(high-number.H)/2)
	b.Add(set, x, 0.3)
	b.Add(said, number.W+captionGap, y+(high-said.H)/2)
	return b
}

// markSet returns what sets one mark of a pair in a width.
func (s Setter) markSet(name string, stop bool, u *deck.Setup, m *deck.PairMark, r *deck.Run, others bool) func(w paper.Paper) paper.Block {
	return func(w paper.Paper) paper.Block {
		if m == nil {
			b := s.titled(markSign(stop), name)
			b.Add(s.Say(w-b.W-3, "no mark: "+wording.Unmarked(u, stop)), b.W+3, 0.5)
			return b
		}
		marking := wording.MarkingOf(r, stop, m.Guide, s.Blocks)
		head := s.flagged(name, marking)
		besides := ""
		if others {
			besides = marking.Others(m, s.Plain)
		}
		return s.wordsBeside(head, marking, &m.Mark, besides, w)
	}
}

// wordsBeside sets the number of a mark beside its name, and what it is for beside
// that or, without room, under it.
func (s Setter) wordsBeside(head paper.Block, marking wording.Marking, m *deck.Mark, others string, w paper.Paper) paper.Block {
	x := head.W + 2
	number := s.Built(marking.Length(m), setWhole, setFraction, w-x)
	under := head
	under.Add(number, x, 0)
	under.Below(paper.Stack(0.8, s.Strong(w, 3.2, marking.Set), s.Say(w, marking.For+", "+marking.From)), underFigure)
	room := w - x - number.W - captionGap
	if room < leastWords {
		return under
	}
	words := paper.Stack(0.4, s.Strong(room, 3.2, marking.Set), s.Say(room, marking.For), s.Say(room, marking.From))
	if l := s.Say(room, others); others != "" && l.H < 9 {
		words.Below(l, 0.4)
	}
	if words.H > under.H {
		return under
	}
	b := head
	high := max(number.H, words.H)
	b.Add(number, x, (high-number.H)/2)
	b.Add(words, max(x+number.W+captionGap, min(x+30, w-words.W)), (high-words.H)/2)
	return b
}

// leastWords is how much room the words beside a number need.
const leastWords paper.Paper = 31

// leastBeside is the same in a narrow column.
const leastBeside paper.Paper = 24

// flagSide is how large the sign before the name of what is set is.
const flagSide = 5

// flagged is START or STOP behind the sign of what is set for it.
func (s Setter) flagged(name string, marking wording.Marking) paper.Block {
	if marking.Clamped() {
		return s.titled(stopSign(), name)
	}
	return s.titled(markSign(name == "STOP"), name)
}

// markSign is the sign of a mark: a triangle, filled for a start, hollow for a stop.
func markSign(stop bool) paper.Block {
	return paper.Figure("flag", flagSide, flagSide, func(c paper.Canvas, at paper.Point) { triangle(c, at.Add(flagSide/2, flagSide), flagSide, stop) })
}

// stopSign is the sign of a stop that is clamped.
func stopSign() paper.Block {
	var d paper.Drawing
	d.W, d.H = flagSide, flagSide
	views.Crossed(&d, paper.Box{X: 0.6, Y: 0.6, W: flagSide - 1.2, H: flagSide - 1.2})
	return d.Block()
}

// titled is a name behind its sign.
func (s Setter) titled(sign paper.Block, name string) paper.Block {
	sign.Add(s.Strong(40, 3.2, name), flagSide+1.2, 0.3)
	return sign
}

// triangle points down at a tip: filled for a start, hollow for a stop.
func triangle(c paper.Canvas, tip paper.Point, side paper.Paper, hollow bool) {
	path := []paper.Point{tip, tip.Add(-side/2, -side), tip.Add(side/2, -side), tip}
	shade := paper.Black
	if hollow {
		shade = paper.White
	}
	c.Fill(shade, path...)
	c.Stroke(paper.Thick, path...)
}
