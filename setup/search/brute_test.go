package search_test

import (
	"context"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/internal/brute"
	"fencecard/setup/ladder"
	"fencecard/setup/search"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
)

// cases says what the problems of a test have.
type cases struct {
	blocks   bool // stop blocks, and turned pieces
	cutting  bool // passes and trials of fit that cost time
	every    bool // runs that take every rung
	raised   bool // runs on a carriage
	recessed bool // runs that go on from the floor of a recess, and wait for it
	shaped   bool // bits that shape edges, whose passes are counted by their wood
	problems uint64
}

// batch makes a random problem of a few jobs with much in common.
func batch(random *rand.Rand, c cases) *model.Problem {
	blocks := c.blocks
	division := measure.InchScale.Division
	p := &model.Problem{
		Minutes: joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2, Stop: joinery.Minute},
		Scale:   measure.InchScale,
	}
	if c.cutting {
		p.Minutes.Pass, p.Minutes.Fit = joinery.Minute/5, 2*joinery.Minute
	}
	step := measure.Length(8)
	if random.IntN(3) == 0 {
		step = 7 // of halves: depths off the scale
	}
	demand := func() ladder.Demand {
		return ladder.Demand{
			Depth: measure.Length(1+random.IntN(5)) * step * division / (9 - step),
			Cap:   measure.Length(1+random.IntN(3)) * 8 * division,
			Every: c.every,
		}
	}
	var outlines []*joinery.Outline
	if c.shaped {
		for shape := range joinery.Drawn {
			outlines = append(outlines, &joinery.Outline{Shape: shape, Radius: 24 * division})
		}
	}
	bits, fences := 1+random.IntN(3), 1+random.IntN(4)
	jobs := 1 + random.IntN(7)
	for j := range jobs {
		var job model.Job
		over := 0
		if c.cutting {
			over = 1 + random.IntN(4)*random.IntN(6)
		}
		depth := demand()
		recess := measure.Length(0)
		if c.recessed && random.IntN(2) == 0 {
			recess = measure.Length(random.IntN(int(depth.Depth/(4*division))+1)) * 4 * division
			recess = min(recess, p.Scale.Floor(depth.Depth-1))
		}
		for range 1 + random.IntN(3) {
			var w model.Way
			bit := random.IntN(bits)
			turned := blocks && random.IntN(6) == 0
			from := measure.Length(random.IntN(fences))
			cap, n := demand().Cap, 1
			if random.IntN(3) == 0 || turned {
				n = 2
			}
			for i := range n {
				r := model.Run{Bit: bit, Fence: from, Demand: ladder.Demand{Depth: depth.Depth, Cap: cap, Every: c.every, From: recess}, Over: over}
				if outlines != nil {
					r.Demand.Section.Outline = outlines[bit]
					r.Demand.Cap *= 3
				}
				if !turned {
					r.Fence += measure.Length(i * (1 + random.IntN(2)))
				}
				if blocks {
					r.Blocks = random.IntN(3)
				}
				if c.raised && random.IntN(3) == 0 {
					r.Raised = true
				}
				w.Runs = append(w.Runs, r)
			}
			w.Turned = turned
			if n > 1 && c.cutting {
				w.Fits = []int{random.IntN(3)}
			}
			job.Ways = append(job.Ways, w)
		}
		if recess > 0 && j > 0 && random.IntN(2) == 0 {
			job.After = append(job.After, j-1)
		}
		for a := range j {
			if random.IntN(5) == 0 && !slices.Contains(job.After, a) {
				job.After = append(job.After, a)
			}
		}
		p.Jobs = append(p.Jobs, job)
	}
	return p
}

func TestAgainstBruteForce(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]cases{
		"marks":               {problems: 300},
		"blocks":              {blocks: true, problems: 100},
		"cutting":             {cutting: true, problems: 300},
		"cutting with blocks": {cutting: true, blocks: true, problems: 150},
		"every rung":          {cutting: true, every: true, problems: 100},
		"on a carriage":       {cutting: true, raised: true, problems: 100},
		"recessed":            {recessed: true, problems: 300},
		"recessed, cutting":   {recessed: true, cutting: true, problems: 300},
		"recessed, rungs":     {recessed: true, cutting: true, every: true, problems: 100},
		"shaped":              {shaped: true, problems: 200},
		"shaped, cutting":     {shaped: true, cutting: true, problems: 300},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			for seed := range c.problems {
				p := batch(rand.New(rand.NewPCG(seed, 7)), c)
				a := search.Solve(context.Background(), p, budget.Limit{})
				require.Equal(t, brute.Least(p), a.Cost, "seed %d", seed)
				require.Equal(t, a.Cost, a.Bound, "seed %d", seed)
				require.Equal(t, a.Cost, brute.Cost(p, a.Choice, a.Ascents), "seed %d", seed)
				checkOrder(t, p, a)
			}
		})
	}
}

// checkOrder replays an answer: every run once, each after what it waits for.
func checkOrder(t *testing.T, p *model.Problem, a *model.Answer) {
	climbOf := map[model.JobRun]int{}
	for i, c := range a.Ascents {
		for _, r := range c {
			_, twice := climbOf[r]
			require.False(t, twice)
			climbOf[r] = i
		}
	}
	for j, job := range p.Jobs {
		way := job.Ways[a.Choice[j]]
		for i := range way.Runs {
			at, made := climbOf[model.JobRun{Job: j, Run: i}]
			require.True(t, made)
			if i > 0 && !way.Turned {
				require.Less(t, climbOf[model.JobRun{Job: j, Run: i - 1}], at)
			}
			for _, b := range job.After {
				for k := range p.Jobs[b].Ways[a.Choice[b]].Runs {
					require.Less(t, climbOf[model.JobRun{Job: b, Run: k}], at)
				}
			}
		}
	}
}
