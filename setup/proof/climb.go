package proof

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// climb checks which climb of its setup a run is in: between marks there is
// one; between stop blocks another one begins where the blocks stand otherwise
// than for the run before, and may begin where they do not.
func (p *prover) climb(at int, c, before *Run) {
	want := 1
	switch {
	case !c.says(NoClimb):
		return
	case p.plan.Shop.Stops != joinery.Blocks || before == nil:
	case !sameBlocks(c, before) || c.Climb != before.Climb:
		want = before.Climb + 1
	default:
		want = before.Climb
	}
	if c.Climb != want {
		p.wrongRun(at, "climb", 0, "the run is in climb %d of its setup, not %d", want, c.Climb)
	}
}

// settings counts the heights and the stop blocks set in a setup. A run that
// does not say which climb it is in goes up alone between blocks.
func (p *prover) settings(s *Setup) (heights, stops int) {
	if p.plan.Shop.Stops != joinery.Blocks {
		return len(s.Heights), 0
	}
	set := map[measure.Length]bool{}
	for i := range s.Runs {
		c, first := &s.Runs[i], i == 0
		if !first && (c.Climb == 0 || c.Climb != s.Runs[i-1].Climb) {
			heights += len(set)
			clear(set)
		}
		for _, h := range c.Heights {
			set[h] = true
		}
		if (c.Start != nil || c.Stop != nil) && (first || !sameBlocks(c, &s.Runs[i-1])) {
			stops++
		}
	}
	return heights + len(set), stops
}

// sameBlocks reports whether the blocks of two runs stand alike: the back one
// behind the tail of the work, the front one before its leading end.
func sameBlocks(a, b *Run) bool {
	same := func(a, b *deck.Mark, where func(*deck.Mark) measure.Length) bool {
		return (a == nil) == (b == nil) && (a == nil || where(a) == where(b))
	}
	return same(a.Start, b.Start, func(m *deck.Mark) measure.Length { return m.TailBeforeEdge }) &&
		same(a.Stop, b.Stop, func(m *deck.Mark) measure.Length { return m.LeadPastEdge })
}
