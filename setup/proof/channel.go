package proof

import (
	"cmp"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/solid"
)

// mostRuns is far more than any channel takes; every run is held against those
// before it, so many more would take hours.
const mostRuns = 1000

// channel proves a channel of the plan by all the runs that make it.
func (p *prover) channel(w *wanted) {
	switch {
	case p.claims.Part:
		p.within(w)
	case w.claimed == 0:
		p.deck = append(p.deck, Difference{Piece: w.piece.Name, Cut: w.cut.Name, Field: "runs",
			Text: "no run cuts the " + w.name()})
	case w.claimed > mostRuns:
		p.deck = append(p.deck, Difference{Piece: w.piece.Name, Cut: w.cut.Name, Field: "runs",
			Text: fmt.Sprintf("%d runs cut the %s, which is more than any cut takes", w.claimed, w.name())})
	case len(w.runs) == w.claimed:
		p.positions(w)
		if w.channel.Section.Shaped() {
			p.edge(w)
			return
		}
		p.walls(w)
		p.feedsAgainst(w)
	}
}

// within checks that no run of a part of a deck cuts beyond the walls of its
// channel, and that the first and the last stand at them.
func (p *prover) within(w *wanted) {
	if w.channel.Section.Shaped() {
		p.edge(w)
		return
	}
	ch, size := w.channel, w.piece.Size
	for _, r := range w.runs {
		s := r.strip(ch.Near)
		near, far := s.Lo-ch.Setback, s.Hi-ch.Setback-ch.Width
		// The first run stands at the wall toward its fence, the last away from it;
		// where the piece is turned, both away.
		c := r.claim
		toward, away := c.Position == 1 && !c.Turned, c.Position == c.Positions || c.Turned
		if c.Fence != ch.Near {
			toward, away = away, toward
		}
		if !toward {
			near = min(0, near)
		}
		if !away {
			far = max(0, far)
		}
		if ch.OpenBeside(ch.Near, size) {
			near = 0
		}
		if ch.OpenBeside(ch.Near.Opposite(), size) {
			far = 0
		}
		p.wall(w, r, r, near, far)
	}
}

// positions checks that the runs are counted and turned as they say.
func (p *prover) positions(w *wanted) {
	turned := slices.ContainsFunc(w.runs, func(r run) bool { return r.claim.Fence != w.runs[0].claim.Fence })
	for i, r := range w.runs {
		c := r.claim
		if c.says(NoPosition) && c.Position != i+1 {
			p.wrongRun(r.result, "position", 0, "it calls itself run %d of this %s; it is run %d", c.Position, w.cut.Kind, i+1)
		}
		if c.says(NoPositions) && c.Positions != len(w.runs) {
			p.wrongRun(r.result, "positions", 0, "it counts %d runs for this %s; there are %d", c.Positions, w.cut.Kind, len(w.runs))
		}
		if r.claim.Turned != turned {
			p.wrongRun(r.result, "turned", 0, "the run says that the piece is %s between the runs; it is %s",
				turnedOrNot(r.claim.Turned), turnedOrNot(turned))
		}
	}
}

func turnedOrNot(turned bool) string {
	if turned {
		return "turned"
	}
	return "not turned"
}

// strip is what a run cuts from wall to wall, measured from one side.
func (r run) strip(from joinery.Side) solid.Range {
	across := r.size.Between(from)
	near, far := r.claim.from(r.fence.NearEdge), r.fence.NearEdge+r.bit
	if r.claim.Fence != from {
		near, far = across-far, across-near
	}
	return solid.Range{Lo: near, Hi: far}
}

// walls compares the outermost walls of all runs with the plan's, and looks
// for wood left standing between the runs. Where the channel is open the bit
// may stand out of the piece.
func (p *prover) walls(w *wanted) {
	ch, size := w.channel, w.piece.Size
	runs := append(p.spare[:0], w.runs...)
	p.spare = runs
	slices.SortStableFunc(runs, func(a, b run) int { return cmp.Compare(a.strip(ch.Near).Lo, b.strip(ch.Near).Lo) })
	first, last := runs[0], runs[0]
	reached := first.strip(ch.Near).Hi
	for _, r := range runs[1:] {
		s := r.strip(ch.Near)
		if gap := s.Lo - reached; gap >= 0 {
			p.wrongRun(r.result, "fence", gap, "between this run and the one beside it %s of the %s would be left standing",
				sliver(p, gap), w.cut.Kind)
		}
		if s.Hi > reached {
			reached, last = s.Hi, r
		}
	}
	near := first.strip(ch.Near).Lo - ch.Setback
	far := reached - ch.Setback - ch.Width
	if ch.OpenBeside(ch.Near, size) {
		near = max(0, near)
	}
	if ch.OpenBeside(ch.Near.Opposite(), size) {
		far = min(0, far)
	}
	p.wall(w, first, last, near, far)
}

func sliver(p *prover, gap measure.Length) string {
	if gap == 0 {
		return "a fin"
	}
	return p.text(gap)
}

// wall tells by how much the near and the far wall are off, once where the
// whole channel is out of place.
func (p *prover) wall(w *wanted, first, last run, near, far measure.Length) {
	from, kind := w.channel.Near, w.cut.Kind
	if near.Abs() > hair && !differ(near, far) {
		p.wrongRun(first.result, "fence", near, "the %s would lie %s too near the %s", kind, p.text(near.Abs()), Toward(near, from))
		return
	}
	if near.Abs() > hair {
		p.wrongRun(first.result, "fence", near, "the %s wall of the %s would stand %s too near the %s",
			from, kind, p.text(near.Abs()), Toward(near, from))
	}
	if far.Abs() > hair {
		p.wrongRun(last.result, "fence", far, "the %s wall of the %s would stand %s too near the %s",
			from.Opposite(), kind, p.text(far.Abs()), Toward(far, from))
	}
}

// feedsAgainst checks run by run that the fresh wood lies on the operator's side
// of the bit: where earlier runs have cut further from the fence than wood that
// still stands, the teeth pull the work along.
func (p *prover) feedsAgainst(w *wanted) {
	for i, r := range w.runs {
		this := r.strip(r.claim.Fence)
		var cut []solid.Range
		for _, earlier := range w.runs[:i] {
			if s := earlier.strip(r.claim.Fence).And(this); s.Long() > 0 {
				cut = append(cut, s)
			}
		}
		slices.SortFunc(cut, func(a, b solid.Range) int { return cmp.Compare(a.Lo, b.Lo) })
		fresh := this.Lo
		for _, s := range cut {
			if s.Lo > fresh {
				p.wrongRun(r.result, "order", 0, "the wood this run cuts lies between the bit and the fence, which is a climb cut: run it before run %s",
					p.results[w.runs[0].result].Claimed.Number)
				break
			}
			fresh = max(fresh, s.Hi)
		}
		if fresh >= this.Hi {
			p.wrongRun(r.result, "order", 0, "earlier runs have cut all of this one already")
		}
	}
}
