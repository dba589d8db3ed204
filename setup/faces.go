package setup

import (
	"slices"

	"fencecard/joinery"
)

// sameFaces has cuts in the middle of a piece, jobs[first:], go to the fence by one
// face where the plan lets them: set from opposite ones they are out of line by what
// the stock is off its size. The face that most of them must go by comes first among
// ways that are otherwise the same, of which the search takes the first.
func sameFaces(jobs []Job, first int, kept sameWays) {
	var must [joinery.Top + 1]int
	for i := first; i < len(jobs); i++ {
		if side, ok := jobs[i].oneFace(); ok {
			must[side]++
		}
	}
	for i := first; i < len(jobs); i++ {
		j := &jobs[i]
		near := j.Channel.Near
		far := near.Opposite()
		if !j.inTheMiddle() || must[far] <= must[near] {
			continue
		}
		ways := slices.Clone(j.Ways)
		for w := 1; w < len(ways); w++ {
			if ways[w].Steps[0].Fence == far && ways[w-1].facing(far).same(ways[w]) {
				ways[w-1], ways[w] = ways[w], ways[w-1]
			}
		}
		j.Ways = kept.of(ways)
	}
}

// inTheMiddle reports whether the channel stands in the middle between two walls.
func (j *Job) inTheMiddle() bool {
	return j.Channel.InMiddle(j.Piece.Size)
}

// oneFace is the face that a cut in the middle goes to the fence by in all its ways.
func (j *Job) oneFace() (joinery.Side, bool) {
	side := joinery.NoSide
	for _, way := range j.Ways {
		for _, step := range way.Steps {
			if side == joinery.NoSide {
				side = step.Fence
			}
			if step.Fence != side {
				return side, false
			}
		}
	}
	return side, side != joinery.NoSide && j.inTheMiddle()
}

// facing is the way with another side at the fence.
func (w Way) facing(side joinery.Side) Way {
	w.Steps = slices.Clone(w.Steps)
	for i := range w.Steps {
		w.Steps[i].Fence = side
	}
	return w
}
