package sheets

import (
	"strings"

	"fencecard/joinery"
	"fencecard/output/paper"
	"fencecard/output/wording"
	"fencecard/setup/deck"
)

// marks are two panels: where the work stands at the start and at the stop.
func (s Setter) marks(r *deck.Run, w paper.Paper) paper.Block {
	lead := strings.ToUpper(r.Leads.String())
	return s.panels(w, []func(paper.Paper) paper.Block{
		func(w paper.Paper) paper.Block {
			if r.Start == nil {
				return s.open("START: feed in", "No mark: feed in from the right, "+lead+" end first.", w)
			}
			return s.mark("START:", "drop on,", "TRAILING edge", "(left)", r, false, w)
		},
		func(w paper.Paper) paper.Block {
			if r.Stop == nil {
				return s.open("STOP: run out", "No mark: run out to the left, past the bit.", w)
			}
			return s.mark("STOP:", "lift off,", "LEADING edge", "(right)", r, true, w)
		},
	})
}

// panels sets blocks side by side in frames of one height.
func (s Setter) panels(w paper.Paper, insides []func(paper.Paper) paper.Block) paper.Block {
	n := len(insides)
	each := (w-paper.Paper(n-1)*cardGap)/paper.Paper(n) - 2*panelPad
	var blocks []paper.Block
	var high paper.Paper
	for _, inside := range insides {
		b := inside(each)
		b.W = each
		blocks = append(blocks, b)
		high = max(high, b.H)
	}
	var all paper.Block
	for _, b := range blocks {
		b.H = high
		all.Beside(framed(b, panelPad, paper.Thin), cardGap)
	}
	return all
}

// open is the panel of an end of the cut that has no mark.
func (s Setter) open(head, words string, w paper.Paper) paper.Block {
	return paper.Stack(0, paper.Phrase{}.Say(s.bold(s.grade.body), head).Set(w), paper.Phrase{}.Say(s.Letters(s.grade.body), words).Set(w))
}

// mark is the panel of one mark.
func (s Setter) mark(head, how, edge, side string, r *deck.Run, stop bool, w paper.Paper) paper.Block {
	m := wording.MarkOf(r, stop)
	small := s.Letters(paper.Least)
	title := paper.Phrase{}.Say(s.bold(s.grade.body), head).Say(s.Letters(s.grade.body), how+" "+edge+" "+side).Set(w)
	centre := paper.Phrase{}.Say(small, "From the centre: lead past")
	then := "tail before"
	if s.grade.compact {
		title = paper.Phrase{}.Say(s.bold(s.grade.body), head).Say(s.Letters(s.grade.body), strings.TrimSuffix(edge, " edge")).Say(small, side).Set(w)
		centre, then = paper.Phrase{}.Say(small, "centre: lead"), "tail"
	}
	bid := wording.Bids(r, stop, s.reach, s.blocks)
	ways := s.ways(m, bid, w)
	ways.Below(paper.Phrase{}.Say(small, bid.Mind).Set(w), 1)
	centre = s.Length(centre, small, m.LeadPastCentre).Tie(small, ",").Say(small, then)
	centre = s.Length(centre, small, m.TailBeforeCentre)
	return paper.Stack(1, title, ways, centre.Set(w))
}

// ways sets the two ways to find a mark side by side, or under each other
// where the numbers are too wide for that, each with what is to be set there.
func (s Setter) ways(m *deck.Mark, bid wording.Bid, w paper.Paper) paper.Block {
	const gap = 4
	column := (w - gap) / 2
	lead, tail := "layout line on the edge; leading end past it", "tail end before it"
	if s.grade.compact || bid.Lead != (wording.Step{}) {
		lead, tail = "line on it; lead past it", "tail before it"
	}
	set := func(w paper.Paper) (paper.Block, paper.Block) {
		return s.way(lead, m.LeadPastEdge, bid.Lead, w), s.way(tail, m.TailBeforeEdge, bid.Tail, w)
	}
	left, right := set(column)
	if max(left.W, right.W) > column+paper.Touching {
		left, right = set(w)
		return paper.Stack(1, left, right)
	}
	left.H = max(left.H, right.H)
	left.Add(divider(left.H), column+gap/2, 0)
	left.Add(right, column+gap, 0)
	return left
}

// divider is a rule between numbers that would read as one.
func divider(h paper.Paper) paper.Block {
	return paper.Figure("rule", 0, h, func(c paper.Canvas, at paper.Point) { c.Stroke(paper.Thin, at, at.Add(0, h)) })
}

func (s Setter) way(label string, l joinery.Length, bid wording.Step, w paper.Paper) paper.Block {
	words := paper.Phrase{}
	if bid != (wording.Step{}) {
		words = words.Say(s.bold(paper.Least), bid.Words(s.grade.compact)+":")
	}
	return paper.Stack(0, s.reading(l, w), words.Say(s.Letters(paper.Least), label).Set(w))
}
