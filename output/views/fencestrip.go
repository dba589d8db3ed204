package views

import (
	"cmp"
	"slices"

	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/setup/deck"
)

// Measures of the fence as a pair of marks shows it.
const (
	stripHigh  paper.Paper = 4.4
	stripFlag  paper.Paper = 3.6 // how wide a mark is
	stripBit   paper.Paper = 2.2
	stripApart paper.Paper = 7.5 // between what stands on it
	stripBlock paper.Paper = 2.4 // how large a stop is
	stripEnds  paper.Paper = 18  // kept for the names of its ends
	shortEnds  paper.Paper = 14  // the same on a narrow strip, for shorter names
	wideStrip  paper.Paper = 90
	stripPast  paper.Paper = 10 // from where a fence ends to a stop that stands beyond it
)

// leastShown is how much of a fence is shown each side of the bit, mm: about the half
// of an ordinary one, so that a lone mark beside the bit is drawn beside the bit.
const leastShown = 300

// spot is what stands on a fence: a mark, or a stop before it.
type spot struct {
	at   float64 // mm from the bit's centre, the infeed positive
	x    paper.Paper
	kind string // "start", "stop", "block", "front block"
}

// onFence reports whether it is a mark.
func (m spot) onFence() bool { return m.kind == "start" || m.kind == "stop" }

// spotsOf are what stands on a fence for a pair.
func spotsOf(s setting.Setter, p *deck.Pair, r *deck.Run) []spot {
	var spots []spot
	add := func(at float64, kind string) { spots = append(spots, spot{at: at, kind: kind}) }
	if p.Start != nil {
		if guide := r.Reach(false, s.Reach); guide.Guide == deck.ByLead && !s.Blocks {
			add(guide.At.Millimetres(), "start")
		}
		add(p.Start.TailBeforeCentre.Millimetres(), "block")
	}
	if p.Stop != nil {
		guide := r.Reach(true, s.Reach)
		switch {
		case s.Blocks:
			add(-p.Stop.LeadPastCentre.Millimetres(), "front block")
		case guide.Guide != deck.ByLine:
			add(guide.At.Millimetres(), "stop")
		}
	}
	slices.SortStableFunc(spots, func(a, b spot) int { return cmp.Compare(a.at, b.at) })
	return spots
}

// offEnd reports which end of the usable fence a stop stands beyond: 1 the infeed, -1
// the outfeed, 0 none.
func (m spot) offEnd(s setting.Setter) int {
	in, out := s.Reach.Infeed.Millimetres(), s.Reach.Outfeed.Millimetres()
	switch {
	case m.onFence():
	case in > 0 && m.at > in:
		return 1
	case out > 0 && -m.at > out:
		return -1
	}
	return 0
}

// farthest is how far from the bit a setup's strips show the fence: one scale for all
// its pairs, so that the same number stands at the same place in each; and whether a
// stop of one stands beyond the fence.
func farthest(s setting.Setter, u *deck.Setup) (far float64, beyond bool) {
	far = leastShown
	for i := range u.Marks {
		p := &u.Marks[i]
		for k := range u.Runs {
			if u.Runs[k].Pair != p.Letter {
				continue
			}
			for _, m := range spotsOf(s, p, &u.Runs[k]) {
				if m.offEnd(s) == 0 {
					far = max(far, m.at, -m.at)
				} else {
					beyond = true
				}
			}
			break // they share the marks
		}
	}
	return far, beyond
}

// strip is a fence with what stands on it, on paper.
type strip struct {
	spots       []spot
	left, right paper.Paper // where the fence begins and ends
}

// Of a strip: what is left free at its sides.
const stripSide paper.Paper = 2

// laidOut places what stands on a fence: to scale, but for what would run into one
// another.
func laidOut(s setting.Setter, u *deck.Setup, p *deck.Pair, r *deck.Run, w paper.Paper) strip {
	spots := spotsOf(s, p, r)
	far, beyond := farthest(s, u)
	ends := stripEnds
	if w < wideStrip {
		ends = shortEnds
	}
	// Two marks on a side are told from the bit before a name is.
	ends = min(ends, w/2-stripSide-stripBit-2*stripApart)
	half := w/2 - stripSide - ends
	if beyond {
		half -= stripBlock + stripPast
	}
	place := func(at float64) paper.Paper { return w/2 + paper.Paper(at/far)*half }
	// A stop beyond an end of the fence stands past the end that is drawn.
	left, right := stripSide, w-stripSide
	first, last := 0, len(spots)-1
	if last >= 0 && spots[last].offEnd(s) > 0 {
		spots[last].x = right - stripBlock
		right = spots[last].x - stripPast
		last--
	}
	if last >= first && spots[first].offEnd(s) < 0 {
		spots[first].x = left + stripBlock
		left = spots[first].x + stripPast
		first++
	}
	on := spots[first : last+1]
	// From the bit outward, each clear of the one before.
	x := w/2 + stripBit
	for i := range on {
		if m := &on[i]; m.at > 0 {
			m.x = max(place(m.at), x+stripApart)
			x = m.x
		}
	}
	limit := right - ends
	for i := len(on) - 1; i >= 0 && on[i].at > 0; i-- {
		on[i].x = min(on[i].x, limit)
		limit = on[i].x - stripApart
	}
	x = w/2 - stripBit
	for i := len(on) - 1; i >= 0; i-- {
		if m := &on[i]; m.at <= 0 {
			m.x = min(place(m.at), x-stripApart)
			x = m.x
		}
	}
	low := left + ends
	for i := range on {
		if on[i].at > 0 {
			break
		}
		on[i].x = max(on[i].x, low)
		low = on[i].x + stripApart
	}
	return strip{spots, left, right}
}

// FenceFromAbove shows a fence and the bit before it as the operator sees them,
// with the marks and the back stop where they stand.
func FenceFromAbove(s setting.Setter, u *deck.Setup, p *deck.Pair, r *deck.Run, w paper.Paper) paper.Block {
	laid := laidOut(s, u, p, r, w)
	spots, left, right := laid.spots, laid.left, laid.right
	const side = stripSide
	d := &paper.Drawing{W: w, H: stripHigh + stripBlock}
	face := stripHigh
	bar := paper.Box{X: left, Y: 0, W: right - left, H: stripHigh}
	d.Fill(paper.Pale, bar.Path()...)
	d.Stroke(paper.Thin, bar.Path()...)
	d.Stroke(paper.Pen{Width: 0.5}, paper.At(left, face), paper.At(right, face))
	for _, end := range [][2]paper.Paper{{side, left}, {right, w - side}} {
		if end[1]-end[0] > 1 { // the table beyond the fence, some of it left out
			middle := (end[0] + end[1]) / 2
			d.Stroke(paper.Thin, paper.At(end[0], face), paper.At(end[1], face))
			d.Interrupt(paper.Box{X: middle - 0.8, Y: face - 2.4, W: 1.6, H: 4.8})
		}
	}
	out := face - stripBit/2
	if u.Fence.NearEdge >= 0 {
		out = face + stripBit
	}
	d.Circle(paper.At(w/2, out), stripBit, paper.Mid, paper.Thick)
	for _, m := range spots {
		tip := paper.At(m.x, face)
		switch m.kind {
		case "start", "stop":
			path := []paper.Point{tip, tip.Add(-stripFlag/2, -stripHigh+0.4), tip.Add(stripFlag/2, -stripHigh+0.4), tip}
			shade := paper.Black
			if m.kind == "stop" {
				shade = paper.White
			}
			d.Fill(shade, path...)
			d.Stroke(paper.Thick, path...)
		case "block":
			Crossed(d, paper.Box{X: m.x, Y: face, W: stripBlock, H: stripBlock})
		default:
			Crossed(d, paper.Box{X: m.x - stripBlock, Y: face, W: stripBlock, H: stripBlock})
		}
	}
	// The names of the ends, where no mark stands in their way; an arrow to the
	// outfeed where there is room.
	free := func(from, to paper.Paper) bool {
		return !slices.ContainsFunc(spots, func(m spot) bool { return m.onFence() && m.x+stripFlag/2+1 > from && m.x-stripFlag/2-1 < to })
	}
	const arrow = 9
	outfeed, infeed := []string{"OUTFEED", "OUT"}, []string{"INFEED", "IN"}
	if w < wideStrip { // both in short
		outfeed, infeed = outfeed[1:], infeed[1:]
	}
	for _, name := range outfeed {
		text, x := s.Say(w, name), left+1
		if !free(x, x+text.W) {
			continue
		}
		d.Text(text, x, (stripHigh-text.H)/2)
		if free(x, x+text.W+arrow+2) && x+text.W+arrow < w/2-stripBit {
			d.Arrow(paper.Pen{Width: 0.6}, 3.2, paper.At(x+text.W+1+arrow, stripHigh/2), paper.At(x+text.W+1, stripHigh/2))
		}
		break
	}
	for _, name := range infeed {
		text := s.Say(w, name)
		if x := right - 1 - text.W; free(x, right) {
			d.Text(text, x, (stripHigh-text.H)/2)
			break
		}
	}
	return d.Block()
}
