// Package brute finds the cheapest way to run a small batch by trying them all.
// It serves the tests of the search, with which it shares no code but the types
// of the problem and the count of a ladder's rungs, which has a brute force of
// its own.
package brute

import (
	"fencecard/joinery"
	"fencecard/setup/ladder"
	"fencecard/setup/search/model"
)

// Least finds the least cost by trying every way of every job and, for each,
// every order: at every moment every set of runs that may be made now at one
// bit, fence distance and pair of blocks. It takes long beyond seven jobs.
func Least(p *model.Problem) joinery.Time {
	b := &brute{p: p, choice: make([]int, len(p.Jobs)), best: 1 << 40}
	b.choose(0)
	return b.best
}

// Cost is the time a choice of ways takes in an order of ascents, the cutting
// with it.
func Cost(p *model.Problem, choice []int, ascents []model.Ascent) joinery.Time {
	total := (&brute{p: p, choice: choice}).fitting()
	var last *model.Run
	for _, ascent := range ascents {
		demands := make([]ladder.Demand, len(ascent))
		var run *model.Run
		for i, r := range ascent {
			run = &p.Jobs[r.Job].Ways[choice[r.Job]].Runs[r.Run]
			demands[i] = run.Demand
		}
		newBit := last == nil || last.Bit != run.Bit
		newFence := newBit || last.Fence != run.Fence
		if newBit {
			total += p.Minutes.Bit
		}
		if newFence {
			total += p.Minutes.Fence
		}
		if run.Blocks != 0 && (newFence || last.Blocks != run.Blocks) {
			total += p.Minutes.Stop
		}
		heights := ladder.Of(demands, p.Scale)
		total += joinery.Time(len(heights)) * p.Minutes.Height
		for i, r := range ascent {
			over := p.Jobs[r.Job].Ways[choice[r.Job]].Runs[r.Run].Over
			total += joinery.Time(over*len(ladder.Used(heights, demands[i]))) * p.Minutes.Pass
		}
		last = run
	}
	return total
}

type brute struct {
	p      *model.Problem
	choice []int
	best   joinery.Time

	runs   []model.Run
	before []int // for each run the runs, as bits, that must be in earlier climbs
	twin   []int // for each run its other run where the piece is turned, or -1
	seen   map[bruteState]joinery.Time
	known  map[int]joinery.Time // what ascents take, by their runs as bits
}

type bruteState struct{ done, last int }

func (b *brute) choose(job int) {
	if job == len(b.p.Jobs) {
		b.lay()
		b.seen, b.known = map[bruteState]joinery.Time{}, map[int]joinery.Time{}
		b.visit(0, -1, b.fitting())
		return
	}
	for w := range b.p.Jobs[job].Ways {
		b.choice[job] = w
		b.choose(job + 1)
	}
}

// lay lists the runs of the choice and what each waits for.
func (b *brute) lay() {
	b.runs, b.before, b.twin = nil, nil, nil
	first := make([]int, len(b.choice)+1)
	for j, w := range b.choice {
		first[j] = len(b.runs)
		way := b.p.Jobs[j].Ways[w]
		for i, r := range way.Runs {
			before, twin := 0, -1
			switch {
			case way.Turned:
				twin = first[j] + 1 - i
			case i > 0:
				before = 1 << (first[j] + i - 1)
			}
			b.runs, b.before, b.twin = append(b.runs, r), append(b.before, before), append(b.twin, twin)
		}
	}
	first[len(b.choice)] = len(b.runs)
	for j := range b.choice {
		for _, a := range b.p.Jobs[j].After {
			for i := first[j]; i < first[j+1]; i++ {
				for k := first[a]; k < first[a+1]; k++ {
					b.before[i] |= 1 << k
				}
			}
		}
	}
}

func (b *brute) visit(done, last int, spent joinery.Time) {
	if spent >= b.best {
		return
	}
	state := bruteState{done, last}
	if known, ok := b.seen[state]; ok && known <= spent {
		return
	}
	b.seen[state] = spent
	if done == 1<<len(b.runs)-1 {
		b.best = spent
		return
	}
	for first := range b.runs {
		var here []int // runs at first's station that may be made now, first the least of them
		for i := first; i < len(b.runs); i++ {
			if done&(1<<i) == 0 && b.before[i]&^done == 0 && b.same(i, first) {
				here = append(here, i)
			}
		}
		if len(here) == 0 || here[0] != first || !b.allowed(done, last, first) {
			continue
		}
		for part := 1; part < 1<<len(here); part += 2 {
			var list []int
			for k, i := range here {
				if part&(1<<k) != 0 {
					list = append(list, i)
				}
			}
			next := done
			for _, i := range list {
				next |= 1 << i
			}
			b.visit(next, first, spent+b.cost(last, list))
		}
	}
}

func (b *brute) same(i, j int) bool {
	r, s := b.runs[i], b.runs[j]
	return r.Bit == s.Bit && r.Fence == s.Fence && r.Blocks == s.Blocks && r.Raised == s.Raised
}

// allowed reports whether the table may go from one run's station to another's:
// a turned piece is finished before the fence is moved.
func (b *brute) allowed(done, last, next int) bool {
	for i, twin := range b.twin {
		if twin >= 0 && done&(1<<i) != 0 && done&(1<<twin) == 0 {
			if b.runs[next].Bit != b.runs[last].Bit || b.runs[next].Fence != b.runs[last].Fence {
				return false
			}
		}
	}
	return true
}

func (b *brute) cost(last int, list []int) joinery.Time {
	r := b.runs[list[0]]
	var cost joinery.Time
	moved := last < 0 || b.runs[last].Bit != r.Bit || b.runs[last].Fence != r.Fence
	if last < 0 || b.runs[last].Bit != r.Bit {
		cost += b.p.Minutes.Bit
	}
	if moved {
		cost += b.p.Minutes.Fence
	}
	if r.Blocks > 0 && (moved || b.runs[last].Blocks != r.Blocks) {
		cost += b.p.Minutes.Stop
	}
	return cost + b.ascent(list)
}

// ascent is what the heights and the passes of one ascent take, by the ladder
// that has its own brute force.
func (b *brute) ascent(list []int) joinery.Time {
	key := 0
	demands := make([]ladder.Demand, len(list))
	for k, i := range list {
		demands[k] = b.runs[i].Demand
		key |= 1 << i
	}
	cost, ok := b.known[key]
	if ok {
		return cost
	}
	heights := ladder.Of(demands, b.p.Scale)
	cost = joinery.Time(len(heights)) * b.p.Minutes.Height
	for k, i := range list {
		passes := b.runs[i].Over * len(ladder.Used(heights, demands[k]))
		cost += joinery.Time(passes) * b.p.Minutes.Pass
	}
	b.known[key] = cost
	return cost
}

// fitting is what the trials of fit take, each made once.
func (b *brute) fitting() joinery.Time {
	var cost joinery.Time
	made := map[int]bool{}
	for j, w := range b.choice {
		for _, f := range b.p.Jobs[j].Ways[w].Fits {
			if !made[f] {
				made[f] = true
				cost += b.p.Minutes.Fit
			}
		}
	}
	return cost
}
