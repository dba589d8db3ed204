package setup

import (
	"slices"

	"fencecard/joinery"
)

// Jobs lists every channel of a plan with the ways to make it, in the plan's
// order, or the faults that stop the deck: channels that no bit of the shop
// can make.
func Jobs(plan *joinery.Plan) ([]Job, error) {
	var jobs []Job
	var faults joinery.Faults
	var stopped []*joinery.Piece
	m := maker{&plan.Shop}
	for i := range plan.Pieces {
		p := &plan.Pieces[i]
		first := len(jobs)
		for j := range p.Cuts {
			c := &p.Cuts[j]
			for _, ch := range c.Channels {
				ways, why := m.ways(p, c, ch)
				if len(ways) == 0 {
					stopped = append(stopped, p)
					faults.Add(why.fault(p, c, ch, &plan.Shop))
				}
				jobs = append(jobs, Job{Piece: p, Cut: c, Channel: ch, Ways: ways})
			}
		}
		linkAfter(jobs, first)
	}
	if f, ok := wrongUnit(plan, stopped); ok {
		return nil, joinery.Faults{f}
	}
	if err := faults.Err(); err != nil {
		return nil, err
	}
	return jobs, nil
}

// linkAfter fills After for one piece's jobs, jobs[first:].
func linkAfter(jobs []Job, first int) {
	for i := first; i < len(jobs); i++ {
		if len(jobs[i].Cut.After) == 0 {
			continue
		}
		for j := first; j < len(jobs); j++ {
			if slices.Contains(jobs[i].Cut.After, jobs[j].Cut.Name) {
				jobs[i].After = append(jobs[i].After, j)
			}
		}
	}
}
