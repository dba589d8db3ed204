package output

import (
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// marks are two panels: where the work stands at the start and at the stop.
func (s setter) marks(r *deck.Run, w Paper) block {
	lead := strings.ToUpper(r.Leads.String())
	return s.panels(w, []func(Paper) block{
		func(w Paper) block {
			if r.Start == nil {
				return s.open("START: feed in", "No mark: feed in from the right, "+lead+" end first.", w)
			}
			return s.mark("START:", "drop on,", "TRAILING edge", "(left)", r, false, w)
		},
		func(w Paper) block {
			if r.Stop == nil {
				return s.open("STOP: run out", "No mark: run out to the left, past the bit.", w)
			}
			return s.mark("STOP:", "lift off,", "LEADING edge", "(right)", r, true, w)
		},
	})
}

// panels sets blocks side by side in frames of one height.
func (s setter) panels(w Paper, insides []func(Paper) block) block {
	n := len(insides)
	each := (w-Paper(n-1)*cardGap)/Paper(n) - 2*panelPad
	var blocks []block
	var high Paper
	for _, inside := range insides {
		b := inside(each)
		b.w = each
		blocks = append(blocks, b)
		high = max(high, b.h)
	}
	var all block
	for _, b := range blocks {
		b.h = high
		all.beside(framed(b, panelPad, thin), cardGap)
	}
	return all
}

// open is the panel of an end of the cut that has no mark.
func (s setter) open(head, words string, w Paper) block {
	return stack(0, phrase{}.say(s.bold(s.grade.body), head).set(w), phrase{}.say(s.letters(s.grade.body), words).set(w))
}

// mark is the panel of one mark.
func (s setter) mark(head, how, edge, side string, r *deck.Run, stop bool, w Paper) block {
	m := markOf(r, stop)
	small := s.letters(least)
	title := phrase{}.say(s.bold(s.grade.body), head).say(s.letters(s.grade.body), how+" "+edge+" "+side).set(w)
	centre := phrase{}.say(small, "From the centre: lead past")
	then := "tail before"
	if s.grade.compact {
		title = phrase{}.say(s.bold(s.grade.body), head).say(s.letters(s.grade.body), strings.TrimSuffix(edge, " edge")).say(small, side).set(w)
		centre, then = phrase{}.say(small, "centre: lead"), "tail"
	}
	bid := bids(r, stop, s.reach, s.blocks)
	ways := s.ways(m, bid, w)
	ways.below(phrase{}.say(small, bid.mind).set(w), 1)
	centre = s.length(centre, small, m.LeadPastCentre).tie(small, ",").say(small, then)
	centre = s.length(centre, small, m.TailBeforeCentre)
	return stack(1, title, ways, centre.set(w))
}

// ways sets the two ways to find a mark side by side, or under each other
// where the numbers are too wide for that, each with what is to be set there.
func (s setter) ways(m *deck.Mark, bid bid, w Paper) block {
	const gap = 4
	column := (w - gap) / 2
	lead, tail := "layout line on the edge; leading end past it", "tail end before it"
	if s.grade.compact || bid.lead != (step{}) {
		lead, tail = "line on it; lead past it", "tail before it"
	}
	set := func(w Paper) (block, block) {
		return s.way(lead, m.LeadPastEdge, bid.lead, w), s.way(tail, m.TailBeforeEdge, bid.tail, w)
	}
	left, right := set(column)
	if max(left.w, right.w) > column+touching {
		left, right = set(w)
		return stack(1, left, right)
	}
	left.h = max(left.h, right.h)
	left.add(divider(left.h), column+gap/2, 0)
	left.add(right, column+gap, 0)
	return left
}

// divider is a rule between numbers that would read as one.
func divider(h Paper) block {
	return figure("rule", 0, h, func(c Canvas, at Point) { c.Stroke(thin, at, at.Add(0, h)) })
}

func (s setter) way(label string, l joinery.Length, bid step, w Paper) block {
	words := phrase{}
	if bid != (step{}) {
		words = words.say(s.bold(least), bid.words(s.grade.compact)+":")
	}
	return stack(0, s.reading(l, w), words.say(s.letters(least), label).set(w))
}
