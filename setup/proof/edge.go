package proof

import (
	"math"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// speck is how far two areas may differ in mm2 and still be called equal.
const speck = 0.01

// forward is how far the fence stands forward of the bit's pilot.
func (t table) forward(f deck.Fence) measure.Length { return -f.Centre - t.tool.Pilot/2 }

// edge proves a shaped edge by all its runs: each stands where the outline wants
// it, none takes what the shape keeps, none more than the bit may, and the last
// leaves the section of the plan.
func (p *prover) edge(w *wanted) {
	want := w.channel.Section
	gone, before := 0.0, measure.Length(math.MaxInt64)
	for i, r := range w.runs {
		c, s := r.claim, r.forward(r.fence)
		last := i == len(w.runs)-1
		if p.claims.Part {
			last = c.Position == c.Positions
		}
		if !r.tool.Outline.Same(want.Outline) {
			p.wrongRun(r.result, "bit", 0, "the %s bit does not have the outline that the plan wants", r.tool.Name)
			return
		}
		switch off := s - want.Forward; {
		case last && off.Abs() > hair:
			p.wrongRun(r.result, "fence", off, "the fence would stand %s too far %s the pilot", p.text(off.Abs()), map[bool]string{true: "forward of", false: "behind"}[off > 0])
		case off < -hair:
			p.wrongRun(r.result, "fence", off, "the bit would take %s that the shape keeps", p.text(-off))
		case s >= before:
			p.wrongRun(r.result, "order", 0, "the fence must go away from the bit from one run of this %s to the next", w.cut.Kind)
		}
		hollow := want.Outline.Undercut()
		if !hollow && len(w.runs) > 1 && !p.claims.Part {
			p.wrongRun(r.result, "positions", 0, "this outline has no hollow: it takes its passes by height at one fence distance")
		}
		if hollow && len(c.Heights) > 1 {
			p.wrongRun(r.result, "heights", 0, "the outline has a hollow, so a pass at %s would take wood that the shape keeps", p.text(c.Heights[0]))
		}
		if p.claims.Part && hollow && c.Position > 1 {
			gone = -1 // what the runs before it took is not known here
		}
		gone = p.edgePasses(w, r, s, gone)
		before = s
	}
}

// edgePasses weighs the wood of each pass of a run, and returns what is gone after it.
func (p *prover) edgePasses(w *wanted, r run, forward measure.Length, gone float64) float64 {
	c := r.claim
	if len(c.Areas) != len(c.Heights) {
		p.wrongRun(r.result, "areas", 0, "the run gives %d areas for %d passes", len(c.Areas), len(c.Heights))
		return gone
	}
	most := p.cap(c, &p.tools[r.setup], w)
	for i, h := range c.Heights {
		now := swept(r.tool.Outline, h, forward)
		takes := now - gone
		if gone < 0 {
			gone = now
			continue
		}
		gone = now
		if math.Abs(c.Areas[i]-takes) > speck {
			p.wrongRun(r.result, "areas", 0, "the pass to %s takes %.2f mm2, not %.2f", p.text(h), takes, c.Areas[i])
		}
		if i < mostPasses && takes-most.Depth.Millimetres() > speck {
			p.wrongRun(r.result, "heights", 0, "the pass to %s takes %.2f mm2, more than the %.2f that the bit may: %s", p.text(h), takes, most.Depth.Millimetres(), most.Rule)
		}
		if i < mostPasses && takes <= 0 {
			p.wrongRun(r.result, "heights", 0, "the pass to %s cuts nothing", p.text(h))
		}
	}
	return gone
}

// chords is into how many straight lines a curve is cut.
const chords = 2000

// spot is a place on a bit's outline in mm: how far below the pilot, and how far
// beyond it.
type spot struct{ below, out float64 }

// profileOf cuts a bit's outline into straight lines, by the angle at the centre
// of its curve.
func profileOf(o *joinery.Outline) []spot {
	r := o.Radius.Millimetres()
	switch o.Shape {
	case joinery.Drawn:
		var all []spot
		for _, c := range o.Corners {
			all = append(all, spot{c.Below.Millimetres(), c.Reach.Millimetres()})
		}
		return all
	case joinery.Sloped:
		return []spot{{0, 0}, {r, r}}
	}
	all := make([]spot, chords+1)
	for i := range all {
		sin, cos := math.Sincos(math.Pi / 2 * float64(i) / chords)
		if o.Shape == joinery.Round {
			all[i] = spot{r * sin, r * (1 - cos)}
		} else {
			all[i] = spot{r * (1 - cos), r * sin}
		}
	}
	return all
}

// swept is the wood in mm2 between the fence face and the bit's outline, from the
// table up to its raise: a polygon, clipped at the fence and at the table, and its
// area by the shoelace rule.
func swept(o *joinery.Outline, raise, forward measure.Length) float64 {
	h, s := raise.Millimetres(), forward.Millimetres()
	poly := [][2]float64{{-s, h}}
	for _, at := range profileOf(o) {
		poly = append(poly, [2]float64{at.out - s, h - at.below})
	}
	end := poly[len(poly)-1]
	foot := math.Min(end[1], 0) - 1
	poly = append(poly, [2]float64{end[0], foot}, [2]float64{-s, foot})
	poly = clipped(clipped(poly, 0), 1)
	twice := 0.0
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		twice += a[0]*b[1] - b[0]*a[1]
	}
	return math.Abs(twice) / 2
}

// outOfFence is how long the bit comes out of the fence face at any height up to its
// raise: of all the circles that its outline turns in, the longest chord, found by
// halving.
func outOfFence(bit *joinery.Bit, f deck.Fence, raise measure.Length) measure.Length {
	centre, widest := f.Centre.Millimetres(), 0.0
	low := spot{below: -1}
	for _, at := range profileOf(bit.Outline) {
		out := at.out
		if most := raise.Millimetres(); at.below > most { // the table cuts the outline here
			if low.below < 0 || low.below >= most {
				break
			}
			out = low.out + (at.out-low.out)*(most-low.below)/(at.below-low.below)
		}
		widest, low = math.Max(widest, bit.Pilot.Millimetres()/2+out), at
	}
	lo, hi := 0.0, widest
	for range 60 {
		if half := (lo + hi) / 2; math.Hypot(half, centre) < widest {
			lo = half
		} else {
			hi = half
		}
	}
	return measure.FromMillimetres(lo + hi)
}

// clipped keeps what of a polygon lies at or above zero on one axis.
func clipped(poly [][2]float64, axis int) [][2]float64 {
	var kept [][2]float64
	for i, a := range poly {
		b := poly[(i+1)%len(poly)]
		if a[axis] >= 0 {
			kept = append(kept, a)
		}
		if (a[axis] >= 0) != (b[axis] >= 0) {
			t := a[axis] / (a[axis] - b[axis])
			kept = append(kept, [2]float64{a[0] + t*(b[0]-a[0]), a[1] + t*(b[1]-a[1])})
		}
	}
	return kept
}

// largerFirst checks that of two shapes on one arris the one that takes more wood
// is cut first, unless the plan has it wait.
func (p *prover) largerFirst(w *wanted, of *wantedPiece) {
	ch := w.channel
	if !ch.Section.Shaped() || len(w.runs) == 0 {
		return
	}
	takes := func(c *joinery.Channel) float64 { return swept(c.Section.Outline, c.Depth, c.Section.Forward) }
	for i := range of.channels {
		other := &of.channels[i]
		c := other.channel
		if other == w || !c.Section.Shaped() || len(other.runs) == 0 || c.Down != ch.Down || c.Near != ch.Near || c.Lo >= ch.Hi || ch.Lo >= c.Hi ||
			takes(c) <= takes(ch)+speck || slices.Contains(w.piece.WaitsFor(other.cut), w.cut.Name) {
			continue
		}
		if last := other.runs[len(other.runs)-1]; !p.later(w.runs[0], last) {
			p.wrongRun(w.runs[0].result, "order", 0, "%q takes more wood of the same arris, and comes only at run %s", other.cut.Name, p.results[last.result].Claimed.Number)
		}
	}
}
