package deck

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Pair is one start and one stop position at a setup, for all the runs that
// need just these: their marks and stops stand at the same places and are met
// by the same end of the work.
type Pair struct {
	Letter      string    // A, B, ... without I and O; after Z comes AA
	Start, Stop *PairMark // nil where its runs have none
}

// PairMark is where a pair's runs start or stop. Of the measures in the mark
// those count that are the same for all the runs.
type PairMark struct {
	Mark
	Guide Guide
	Lead  bool // the line and the measures from the leading end hold for all
	Tail  bool // the measures from the tail end hold for all
}

// pairKey is what runs must agree in to share a pair.
type pairKey struct {
	begin       Begin
	end         End
	start, stop Reached
	startLine   measure.Length // where the layout line is the guide
	stopLine    measure.Length
	back, front measure.Length // where the stops stand
}

// keyOf returns what a run's marks and stops need. Between blocks the work
// stops against the front one, whatever else it could be measured by; a drop
// has its back stop always.
func keyOf(r *Run, shop *joinery.Shop) pairKey {
	k := pairKey{begin: r.Begin, end: r.End}
	if r.Start != nil {
		k.start, k.back = r.Reach(false, shop.Fence), r.Start.TailBeforeEdge
		if k.start.Guide == ByLine {
			k.startLine = r.Start.Line
		}
	}
	if r.Stop != nil {
		k.stop = r.Reach(true, shop.Fence)
		if k.stop.Guide == ByLine {
			k.stopLine = r.Stop.Line
		}
		if shop.Stops == joinery.Blocks {
			k.front = r.Stop.LeadPastEdge
		}
	}
	return k
}

// PairUp gives every run of the setup that is dropped or lifted the letter of
// its pair, and the setup its pairs in running order.
func (s *Setup) PairUp(shop *joinery.Shop) {
	s.Marks = nil
	at := map[pairKey]int{}
	for i := range s.Runs {
		r := &s.Runs[i]
		r.Pair = ""
		if r.Start == nil && r.Stop == nil {
			continue
		}
		k := keyOf(r, shop)
		n, ok := at[k]
		if !ok {
			n = len(s.Marks)
			at[k] = n
			s.Marks = append(s.Marks, Pair{
				Letter: letter(n),
				Start:  markOf(r.Start, k.start.Guide),
				Stop:   markOf(r.Stop, k.stop.Guide),
			})
		}
		p := &s.Marks[n]
		p.Start.share(r.Start)
		p.Stop.share(r.Stop)
		r.Pair = p.Letter
	}
}

func markOf(m *Mark, g Guide) *PairMark {
	if m == nil {
		return nil
	}
	return &PairMark{Mark: *m, Guide: g, Lead: true, Tail: true}
}

// share leaves out the measures in which another run's mark differs.
func (p *PairMark) share(m *Mark) {
	if p == nil {
		return
	}
	p.Lead = p.Lead && p.LeadPastEdge == m.LeadPastEdge
	p.Tail = p.Tail && p.TailBeforeEdge == m.TailBeforeEdge
}

// letters are those that name pairs: none that is read as a figure.
const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"

// letter names pair n, from 0: A to Z, then AA, AB and so on.
func letter(n int) string {
	text := ""
	for n++; n > 0; n = (n - 1) / len(letters) {
		text = string(letters[(n-1)%len(letters)]) + text
	}
	return text
}

// Pair returns the pair with that letter, or nil.
func (s *Setup) Pair(letter string) *Pair {
	for i := range s.Marks {
		if s.Marks[i].Letter == letter {
			return &s.Marks[i]
		}
	}
	return nil
}
