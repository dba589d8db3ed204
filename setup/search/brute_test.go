package search_test

import (
	"context"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup/ladder"
	"fencecard/setup/search"
)

// brute finds the least cost by trying every way of every job and, for each,
// every order: at every moment every set of runs that may be made now at one
// station. It shares no code with the search but the types of the problem.
type brute struct {
	p      *search.Problem
	choice []int
	best   joinery.Time

	runs   []search.Run
	before []int // for each run the runs, as bits, that must be in earlier climbs
	twin   []int // for each run its other run where the piece is turned, or -1
	seen   map[bruteState]joinery.Time
	known  map[string]int // rungs of ladders counted before
}

type bruteState struct{ done, last int }

func leastByBruteForce(p *search.Problem) joinery.Time {
	b := &brute{p: p, choice: make([]int, len(p.Jobs)), best: 1 << 40, known: map[string]int{}}
	b.choose(0)
	return b.best
}

func (b *brute) choose(job int) {
	if job == len(b.p.Jobs) {
		b.lay()
		b.seen = map[bruteState]joinery.Time{}
		b.visit(0, -1, 0)
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
	return r.Bit == s.Bit && r.Fence == s.Fence && r.Blocks == s.Blocks
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
	return cost + joinery.Time(b.rungs(list))*b.p.Minutes.Height
}

// rungs counts the heights of a climb, by the ladder that has its own brute
// force.
func (b *brute) rungs(list []int) int {
	key := make([]byte, 0, 16)
	demands := make([]ladder.Demand, len(list))
	for k, i := range list {
		d := b.runs[i].Demand
		demands[k] = d
		key = append(key, byte(2*d.Depth/b.p.Scale.Division), byte(d.Cap/b.p.Scale.Division))
	}
	n, ok := b.known[string(key)]
	if !ok {
		n = len(ladder.Of(demands, b.p.Scale))
		b.known[string(key)] = n
	}
	return n
}

// batch makes a random problem of a few jobs with much in common.
func batch(random *rand.Rand, blocks bool) *search.Problem {
	division := joinery.InchScale.Division
	p := &search.Problem{
		Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2, Stop: joinery.Minute},
		Scale:   joinery.InchScale,
	}
	step := joinery.Length(8)
	if random.IntN(3) == 0 {
		step = 7 // of halves: depths off the scale
	}
	demand := func() ladder.Demand {
		return ladder.Demand{
			Depth: joinery.Length(1+random.IntN(5)) * step * division / (9 - step),
			Cap:   joinery.Length(1+random.IntN(3)) * 8 * division,
		}
	}
	bits, fences := 1+random.IntN(3), 1+random.IntN(4)
	jobs := 1 + random.IntN(7)
	for j := range jobs {
		var job search.Job
		depth := demand()
		for range 1 + random.IntN(3) {
			var w search.Way
			bit := random.IntN(bits)
			turned := blocks && random.IntN(6) == 0
			from := joinery.Length(random.IntN(fences))
			cap, n := demand().Cap, 1
			if random.IntN(3) == 0 || turned {
				n = 2
			}
			for i := range n {
				r := search.Run{Bit: bit, Fence: from, Demand: ladder.Demand{Depth: depth.Depth, Cap: cap}}
				if !turned {
					r.Fence += joinery.Length(i * (1 + random.IntN(2)))
				}
				if blocks {
					r.Blocks = random.IntN(3)
				}
				w.Runs = append(w.Runs, r)
			}
			w.Turned = turned
			job.Ways = append(job.Ways, w)
		}
		for a := range j {
			if random.IntN(5) == 0 {
				job.After = append(job.After, a)
			}
		}
		p.Jobs = append(p.Jobs, job)
	}
	return p
}

func TestAgainstBruteForce(t *testing.T) {
	for name, c := range map[string]struct {
		blocks   bool
		problems uint64
	}{"marks": {false, 500}, "blocks": {true, 150}} {
		t.Run(name, func(t *testing.T) {
			for seed := range c.problems {
				p := batch(rand.New(rand.NewPCG(seed, 7)), c.blocks)
				a := search.Solve(context.Background(), p, search.Limit{})
				require.Equal(t, leastByBruteForce(p), a.Cost, "seed %d", seed)
				require.True(t, a.Proved(), "seed %d", seed)
				require.Equal(t, a.Cost, p.Cost(a.Choice, a.Climbs), "seed %d", seed)
				checkOrder(t, p, a)
			}
		})
	}
}

// checkOrder replays an answer: every run once, each after what it waits for.
func checkOrder(t *testing.T, p *search.Problem, a *search.Answer) {
	climbOf := map[search.JobRun]int{}
	for i, c := range a.Climbs {
		for _, r := range c {
			_, twice := climbOf[r]
			require.False(t, twice)
			climbOf[r] = i
		}
	}
	for j, job := range p.Jobs {
		way := job.Ways[a.Choice[j]]
		for i := range way.Runs {
			at, made := climbOf[search.JobRun{Job: j, Run: i}]
			require.True(t, made)
			if i > 0 && !way.Turned {
				require.Less(t, climbOf[search.JobRun{Job: j, Run: i - 1}], at)
			}
			for _, b := range job.After {
				for k := range p.Jobs[b].Ways[a.Choice[b]].Runs {
					require.Less(t, climbOf[search.JobRun{Job: b, Run: k}], at)
				}
			}
		}
	}
}
