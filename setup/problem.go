package setup

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
	"fencecard/setup/search/model"
)

// problem puts the jobs to the search.
func problem(jobs []Job, shop *joinery.Shop) *model.Problem {
	p := &model.Problem{Jobs: make([]model.Job, len(jobs)), Minutes: shop.Minutes, Scale: shop.Scale}
	n := newNumbering(shop)
	for i := range jobs {
		p.Jobs[i] = model.Job{Ways: n.ways(&jobs[i]), After: jobs[i].After}
	}
	return p
}

// numbering tells the search of ways in numbers: bits in the order of the plain
// order, equal blocks under one number, equal trials likewise.
type numbering struct {
	shop   *joinery.Shop
	bits   map[*joinery.Bit]int
	stands map[place]int
	trials map[deck.Trial]int
	known  map[sharedWays][]model.Way
}

// place is where blocks stand, for work on the table or on a carriage.
type place struct {
	deck.Stand
	raised bool
}

// sharedWays is all that the search is told of a job, where its marks or blocks
// count for nothing: jobs that agree in it share one list of ways.
type sharedWays struct {
	first *Way // of a list that sameWays kept
	depth measure.Length
	wood  string
	count int
	walls bool           // on both sides
	from  measure.Length // where its wood begins
	edge  joinery.Section
}

func newNumbering(shop *joinery.Shop) *numbering {
	return &numbering{shop, numberBits(shop), map[place]int{{}: 0, {raised: true}: 0}, map[deck.Trial]int{}, map[sharedWays][]model.Way{}}
}

func (n *numbering) ways(job *Job) []model.Way {
	if n.shop.Stops == joinery.Blocks {
		return n.spell(job)
	}
	ch, size := job.Channel, job.Piece.Size
	walls := !ch.OpenBeside(ch.Near, size) && !ch.OpenBeside(ch.Near.Opposite(), size)
	key := sharedWays{&job.Ways[0], ch.Depth, job.Piece.Wood.Name, job.Piece.Count, walls, ch.Recess.Depth, ch.Section}
	if _, ok := n.known[key]; !ok {
		n.known[key] = n.spell(job)
	}
	return n.known[key]
}

func (n *numbering) spell(job *Job) []model.Way {
	ways := make([]model.Way, len(job.Ways))
	for w, way := range job.Ways {
		most := ladder.CapFor(way.Bit, job.Piece.Wood, n.shop)
		runs := make([]model.Run, len(way.Steps))
		for i, step := range way.Steps {
			runs[i] = model.Run{
				Bit: n.bits[step.Bit], Fence: step.NearEdge, Blocks: n.blocks(job, step), Raised: step.Carriage > 0,
				Demand: demand(step, job.Channel, most, n.shop), Over: job.Piece.Count * way.sideways(),
			}
		}
		ways[w] = model.Way{Runs: runs, Turned: way.Steps[0].Turned, Fits: n.fits(job, way)}
	}
	return ways
}

// blocks numbers where the blocks of a run stand; 0 where it needs none.
func (n *numbering) blocks(job *Job, step deck.Step) int {
	if n.shop.Stops != joinery.Blocks {
		return 0
	}
	run := RunOf(job.Piece, job.Cut, job.Channel, step, n.shop.Scale)
	at := place{run.Blocks(), step.Carriage > 0}
	if _, ok := n.stands[at]; !ok {
		n.stands[at] = len(n.stands)
	}
	return n.stands[at]
}

// fits numbers the trial of a way, if it needs one.
func (n *numbering) fits(job *Job, way Way) []int {
	trial, ok := deck.TrialOf(job.Channel, job.Piece.Size, way.Steps[0])
	if !ok {
		return nil
	}
	if _, known := n.trials[trial]; !known {
		n.trials[trial] = len(n.trials)
	}
	return []int{n.trials[trial]}
}

// numberBits numbers the shop's bits, narrowest first.
func numberBits(shop *joinery.Shop) map[*joinery.Bit]int {
	var bits []*joinery.Bit
	for i := range shop.Bits {
		bits = append(bits, &shop.Bits[i])
	}
	slices.SortStableFunc(bits, func(a, b *joinery.Bit) int {
		return cmp.Or(cmp.Compare(a.True(), b.True()), cmp.Compare(a.Name, b.Name))
	})
	numbers := map[*joinery.Bit]int{}
	for i, b := range bits {
		numbers[b] = i
	}
	return numbers
}
