package setup

import (
	"cmp"
	"maps"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// mostShared bounds the fence distances of a way for which others are looked for.
const mostShared = 12

// addCommon adds, for every way with a fence distance between its first and its
// last, the same way by fence distances that other channels need at its bit: there
// the fence is set anyway. Only that neighbours overlap decides what is between.
func addCommon(jobs []Job, scale measure.Scale, kept sameWays) {
	needed := neededAt(jobs)
	for i := range jobs {
		ways := jobs[i].Ways
		all := slices.Clone(ways)
		for _, way := range ways {
			if n := len(way.Steps); n < 3 || n > mostShared || jobs[i].Channel.Section.Shaped() {
				continue
			}
			at := distances(way)
			for _, other := range common(at, needed[way.Bit].without(i, at), way.Bit.True()-scale.Division, scale) {
				if next := way.at(other); !slices.ContainsFunc(all, next.same) {
					all = append(all, next)
				}
			}
		}
		if len(all) > len(ways) {
			jobs[i].Ways = kept.of(all)
		}
	}
}

// need is a fence distance at one bit, and the job that needs it.
type need struct {
	at  measure.Length
	job int // several where more than one does
}

const several = -1

// needs are those of one bit, nearest first.
type needs []need

// neededAt lists, by bit, the fence distances of all ways.
func neededAt(jobs []Job) map[*joinery.Bit]needs {
	seen := map[*joinery.Bit]map[measure.Length]int{}
	for i := range jobs {
		for _, way := range jobs[i].Ways {
			if seen[way.Bit] == nil {
				seen[way.Bit] = map[measure.Length]int{}
			}
			for _, s := range way.Steps {
				if s.Carriage > 0 {
					continue
				}
				if job, ok := seen[way.Bit][s.NearEdge]; ok && job != i {
					seen[way.Bit][s.NearEdge] = several
				} else if !ok {
					seen[way.Bit][s.NearEdge] = i
				}
			}
		}
	}
	needed := map[*joinery.Bit]needs{}
	for bit, at := range seen {
		for _, near := range slices.Sorted(maps.Keys(at)) {
			needed[bit] = append(needed[bit], need{near, at[near]})
		}
	}
	return needed
}

// without lists those between the first and the last of some fence distances that
// not only one job needs.
func (n needs) without(job int, at []measure.Length) []measure.Length {
	byAt := func(n need, at measure.Length) int { return cmp.Compare(n.at, at) }
	from, _ := slices.BinarySearchFunc(n, at[0]+1, byAt)
	to, _ := slices.BinarySearchFunc(n, at[len(at)-1], byAt)
	var between []measure.Length
	for _, one := range n[from:to] {
		if one.job != job {
			between = append(between, one.at)
		}
	}
	return between
}

// common finds other fence distances between the first and the last of some: as
// many of them as there are, near the even ones, and as few as can be that are not
// needed elsewhere. No two are further from one another than step.
func common(even, needed []measure.Length, step measure.Length, scale measure.Scale) [][]measure.Length {
	others := [][]measure.Length{nearEven(even, needed, step), farthest(even[0], even[len(even)-1], needed, step, scale)}
	return slices.DeleteFunc(others, func(at []measure.Length) bool { return slices.Equal(at, even) })
}

// nearEven moves each of some fence distances but the first and the last to the
// needed one nearest to it, where neighbours still overlap.
func nearEven(even, needed []measure.Length, step measure.Length) []measure.Length {
	at := slices.Clone(even)
	for i := 1; i < len(at)-1; i++ {
		low := max(at[i-1]+1, at[len(at)-1]-step*measure.Length(len(at)-1-i))
		best := at[i]
		for _, n := range needed {
			if n < low || n > at[i-1]+step {
				continue
			}
			if best != even[i] && (n-even[i]).Abs() >= (best-even[i]).Abs() {
				continue
			}
			best = n
		}
		at[i] = min(max(best, low), at[i-1]+step)
	}
	return at
}

// farthest goes from needed distance to needed distance, as far as step allows, and
// by others only where none is in reach.
func farthest(from, last measure.Length, needed []measure.Length, step measure.Length, scale measure.Scale) []measure.Length {
	at := []measure.Length{from}
	stops := append(slices.Clone(needed), last)
	for now := from; now < last; {
		i, found := slices.BinarySearch(stops, now+step)
		if !found {
			i--
		}
		if i >= 0 && stops[i] > now {
			now = stops[i]
			at = append(at, now)
			continue
		}
		next := stops[i+1]
		for moves := (next - now + step - 1) / step; moves > 1; moves-- {
			now = between(now, next, moves, step, scale)
			at = append(at, now)
		}
		now = next
		at = append(at, now)
	}
	return at
}

func distances(way Way) []measure.Length {
	at := make([]measure.Length, len(way.Steps))
	for i, s := range way.Steps {
		at[i] = s.NearEdge
	}
	return at
}

// at makes the way at other fence distances.
func (w Way) at(distances []measure.Length) Way {
	step := w.Steps[0]
	w.Steps, w.Passes = make([]deck.Step, len(distances)), len(distances)
	for i, near := range distances {
		step.NearEdge, step.Position, step.Of = near, i+1, len(distances)
		w.Steps[i] = step
	}
	return w
}
