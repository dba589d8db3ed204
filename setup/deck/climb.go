package deck

import (
	"cmp"
	"slices"

	"fencecard/joinery/measure"
)

// Climb is the runs of a setup that go up one ladder together, height by
// height. Between marks a setup has one climb. Between stop blocks it has one
// for every setting of the blocks, and is through with one before the next.
type Climb struct {
	Runs    []Run
	Heights []measure.Length // climbing
	Blocks  bool             // a run starts or stops inside the work, so that blocks must be set
}

// Climbs returns the setup's climbs in running order.
func (s *Setup) Climbs() []Climb {
	var climbs []Climb
	for i := range s.Runs {
		r := &s.Runs[i]
		if i == 0 || r.Climb != s.Runs[i-1].Climb {
			climbs = append(climbs, Climb{Runs: s.Runs[i:i], Blocks: r.Blocks() != (Stand{})})
		}
		last := &climbs[len(climbs)-1]
		last.Runs = last.Runs[:len(last.Runs)+1]
		last.Heights = append(last.Heights, r.Heights...)
	}
	for i := range climbs {
		slices.Sort(climbs[i].Heights)
		climbs[i].Heights = slices.Compact(climbs[i].Heights)
	}
	return climbs
}

// ByLastPass sorts runs by when they are through: those of one climb go up
// together, so that the deeper ends later.
func ByLastPass(a, b *Run) int {
	return cmp.Or(cmp.Compare(a.Setup, b.Setup), cmp.Compare(a.Climb, b.Climb),
		cmp.Compare(a.Channel.Depth, b.Channel.Depth), cmp.Compare(a.Index, b.Index))
}
