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
)

// abreastMarks is how wide a panel must be for start and stop side by side.
const abreastMarks paper.Paper = 112

// pairGroups are the runs of a setup under their pairs.
func (s Setter) pairGroups(u *deck.Setup, mind wording.Mind, w paper.Paper) []group {
	var groups []group
	climb := -1
	for _, runs := range wording.Groups(u) {
		g := group{head: s.pairPanel(u, runs.Pair, runs.Runs, mind, w)}
		if s.Blocks && runs.Climb != climb {
			g.head = paper.Stack(1, s.Strong(w, 3.2, wording.BlocksFor(u, runs.Climb)), g.head)
			climb = runs.Climb
		}
		for _, row := range together(u, runs.Runs, mind) {
			if b := s.runRow(u, row, mind, w); len(row) == 1 || b.H < s.body().H/3 {
				g.rows = append(g.rows, b)
				continue
			}
			for _, r := range row {
				g.rows = append(g.rows, s.runRow(u, []*deck.Run{r}, mind, w))
			}
		}
		groups = append(groups, g)
	}
	return groups
}

// pairPanel is one pair of marks: where they stand on the fence, the number to
// set for each, and the other ways to measure it.
func (s Setter) pairPanel(u *deck.Setup, p *deck.Pair, runs []*deck.Run, mind wording.Mind, w paper.Paper) paper.Block {
	if p == nil {
		return paper.Framed(wide(s.Strong(w-3, paper.Least, "NO MARKS: feed in from the right, run out left."), w-3), 0.8, paper.Thin)
	}
	const pad = 1.2
	inner := w - 2*pad
	letter := black(p.Letter, s.Bold(7), max(10, s.Bold(7).Width(p.Letter)+4), 10)
	var b paper.Block
	b.Add(letter, -pad, -pad)
	b.Add(views.FenceFromAbove(s.Setter, u, p, runs[0], inner-2*letter.W), letter.W, 0)
	asides := s.backStop(p, runs[0])
	under := len(asides) > 0 && inner >= abreastMarks // the other ways have a line there
	if under {
		short := slices.Concat(asides[0], s.otherWays(p, runs[0], wording.Way.Others))
		asides[0] = slices.Concat(asides[0], s.otherWays(p, runs[0], wording.Way.OthersInWords))
		if len(asides[0].Lines(inner)) > len(short.Lines(inner)) {
			asides[0] = short
		}
	}
	asides = append(asides, s.weighed(mind.Pairs[p.Letter])...)
	start := s.markSet("START", false, p.Start, runs[0], !under)
	stop := s.markSet("STOP", true, p.Stop, runs[0], !under)
	if inner >= abreastMarks {
		column := (inner - 4) / 2
		left, right := start(column), stop(column)
		high := max(left.H, right.H)
		y := b.H + 1
		b.Add(left, 0, y)
		b.Add(uprightRule(high-2), column+2, y+2)
		b.Add(right, column+4, y)
	} else {
		b.Below(start(inner), 2)
		b.Below(rule(inner, paper.Thin), 1)
		b.Below(stop(inner), 2)
	}
	for i, line := range asides {
		gap := paper.Paper(0.5)
		if i == 0 {
			gap = underFigure
		}
		b.Below(line.Set(inner), gap)
	}
	return paper.Framed(sized(b, inner, 0), pad, paper.Pen{Width: 0.5})
}

// otherWays are the other ways to measure both marks of a pair, in short or in words.
func (s Setter) otherWays(p *deck.Pair, r *deck.Run, say func(wording.Way, *deck.PairMark, func(measure.Length) string) string) paper.Phrase {
	var all paper.Phrase
	for i, m := range []*deck.PairMark{p.Start, p.Stop} {
		if m == nil {
			continue
		}
		if ways := say(wording.WayOf(r, i == 1, m.Guide, s.Blocks), m, s.Plain); ways != "" {
			all = all.Say(s.Letters(paper.Least), [2]string{"START", "STOP"}[i]+" "+ways+".")
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

// backStop are the lines on the back stop of a drop that is set by a mark, and
// on stops that stand beyond the fence.
func (s Setter) backStop(p *deck.Pair, r *deck.Run) []paper.Phrase {
	var all []paper.Phrase
	for i, m := range []*deck.PairMark{p.Start, p.Stop} {
		if m == nil {
			continue
		}
		if line := wording.WayOf(r, i == 1, m.Guide, s.Blocks).StopLine(m, s.Plain, s.Reach, r); line != "" {
			all = append(all, paper.Phrase{}.Say(s.Bold(paper.Least), line))
		}
	}
	return all
}

// markSet returns what sets one mark of a pair in a width.
func (s Setter) markSet(name string, stop bool, m *deck.PairMark, r *deck.Run, others bool) func(w paper.Paper) paper.Block {
	return func(w paper.Paper) paper.Block {
		head := s.flagged(name, stop)
		if m == nil {
			words := "no mark: feed in from the right"
			if stop {
				words = "no mark: run out to the left"
			}
			b := head
			b.Add(s.Say(w-head.W-3, words), head.W+3, 0.5)
			return b
		}
		way := wording.WayOf(r, stop, m.Guide, s.Blocks)
		x := head.W + 2
		number := s.Built(way.Length(&m.Mark), setWhole, setFraction, w-x)
		ways := ""
		if others {
			ways = way.Others(m, s.Plain)
		}
		under := head
		under.Add(number, x, 0)
		under.Below(paper.Stack(0.8, s.Strong(w, 3.2, way.Set), s.Say(w, way.For+", "+way.From)), underFigure)
		room := w - x - number.W - captionGap
		if room < leastWords {
			return under
		}
		words := paper.Stack(0.4, s.Strong(room, 3.2, way.Set), s.Say(room, way.For), s.Say(room, way.From))
		if l := s.Say(room, ways); ways != "" && l.H < 9 {
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
}

// leastWords is how much room the words beside a number need.
const leastWords paper.Paper = 31

// flagged is START or STOP with its triangle, filled or hollow.
func (s Setter) flagged(name string, stop bool) paper.Block {
	const side = 5
	b := paper.Figure("flag", side, side, func(c paper.Canvas, at paper.Point) { triangle(c, at.Add(side/2, side), side, stop) })
	text := s.Strong(40, 3.2, name)
	b.Add(text, side+1.2, 0.3)
	return b
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
