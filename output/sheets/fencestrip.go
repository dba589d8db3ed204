package sheets

import (
	"slices"

	"fencecard/output/paper"
	"fencecard/output/views"
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
)

// spot is what stands on a fence: a mark, or a stop before it.
type spot struct {
	at   float64 // mm from the bit's centre, the infeed positive
	x    paper.Paper
	kind string // "start", "stop", "block", "front block"
}

// onFence reports whether it is a mark.
func (m spot) onFence() bool { return m.kind == "start" || m.kind == "stop" }

// fenceFromAbove shows a fence and the bit before it as the operator sees them,
// with the marks and the back stop where they stand: to scale, but for what
// would run into one another.
func (s Setter) fenceFromAbove(u *deck.Setup, p *deck.Pair, r *deck.Run, w paper.Paper) paper.Block {
	var spots []spot
	add := func(at float64, kind string) { spots = append(spots, spot{at: at, kind: kind}) }
	if p.Start != nil {
		guide := r.Reach(false, s.Reach)
		if guide.Guide != deck.ByLine && !s.Blocks {
			add(guide.At.Millimetres(), "start")
		}
		if guide.Guide != deck.ByTail || s.Blocks {
			add(p.Start.TailBeforeCentre.Millimetres(), "block")
		}
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
	far := 1.0
	for _, m := range spots {
		far = max(far, m.at, -m.at)
	}
	const side = 2
	half := w/2 - side - stripEnds
	place := func(at float64) paper.Paper { return w/2 + paper.Paper(at/far)*half }
	slices.SortStableFunc(spots, func(a, b spot) int {
		if a.at < b.at {
			return -1
		} else if a.at > b.at {
			return 1
		}
		return 0
	})
	// From the bit outward, each clear of the one before.
	x := w/2 + stripBit
	for i := range spots {
		if m := &spots[i]; m.at > 0 {
			m.x = max(place(m.at), x+stripApart)
			x = m.x
		}
	}
	limit := w - side - stripEnds
	for i := len(spots) - 1; i >= 0 && spots[i].at > 0; i-- {
		spots[i].x = min(spots[i].x, limit)
		limit = spots[i].x - stripApart
	}
	x = w/2 - stripBit
	for i := len(spots) - 1; i >= 0; i-- {
		if m := &spots[i]; m.at <= 0 {
			m.x = min(place(m.at), x-stripApart)
			x = m.x
		}
	}
	low := side + stripEnds
	for i := range spots {
		if spots[i].at > 0 {
			break
		}
		spots[i].x = max(spots[i].x, low)
		low = spots[i].x + stripApart
	}
	d := &paper.Drawing{W: w, H: stripHigh + stripBlock}
	face := stripHigh
	bar := paper.Box{X: side, Y: 0, W: w - 2*side, H: stripHigh}
	d.Fill(paper.Pale, bar.Path()...)
	d.Stroke(paper.Thin, bar.Path()...)
	d.Stroke(paper.Pen{Width: 0.5}, paper.At(side, face), paper.At(w-side, face))
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
			views.Crossed(d, paper.Box{X: m.x, Y: face, W: stripBlock, H: stripBlock})
		default:
			views.Crossed(d, paper.Box{X: m.x - stripBlock, Y: face, W: stripBlock, H: stripBlock})
		}
	}
	outfeed, infeed := s.Say(w, "OUTFEED"), s.Say(w, "INFEED")
	y := (stripHigh - outfeed.H) / 2
	arrow := paper.Paper(9)
	if x := paper.Paper(side + 1); spots[0].x > x+outfeed.W+arrow+stripFlag || !spots[0].onFence() {
		d.Text(outfeed, x, y)
		d.Arrow(paper.Pen{Width: 0.6}, 3.2, paper.At(x+outfeed.W+1+arrow, stripHigh/2), paper.At(x+outfeed.W+1, stripHigh/2))
	}
	if x := w - side - 1 - infeed.W; spots[len(spots)-1].x < x-stripFlag || !spots[len(spots)-1].onFence() {
		d.Text(infeed, x, y)
	}
	return d.Block()
}
