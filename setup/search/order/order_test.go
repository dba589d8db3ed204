package order_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/internal/brute"
	"fencecard/setup/ladder"
	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
	"fencecard/setup/search/order"
)

const in = measure.Inch

var minutes = joinery.Minutes{Bit: 3 * joinery.Minute, Fence: 2 * joinery.Minute, Height: joinery.Minute / 2}

// job has one way: one run at one fence distance.
func job(bit int, fence, depth measure.Length, after ...int) model.Job {
	run := model.Run{Bit: bit, Fence: fence, Demand: ladder.Demand{Depth: depth, Cap: in / 4}}
	return model.Job{Ways: []model.Way{{Runs: []model.Run{run}}}, After: after}
}

// A groove that waits for a mortise with the same bit takes it along, though the
// rabbet between them waits for neither.
func Example() {
	p := &model.Problem{Minutes: minutes, Scale: measure.InchScale, Jobs: []model.Job{
		job(0, 2*in, in/4, 2),
		job(1, in, in/4),
		job(0, in, in/4),
	}}
	m := model.New(p)
	e := order.NewErrands(m, make([]int, len(m.Kinds)), m.Truly())
	last, least := e.Order(order.NoLimit, budget.New(context.Background(), budget.Limit{}))
	fmt.Println((e.Fixed + last.Spent).Minutes(), "min, the least:", last.Spent == least)
	for _, ascent := range e.Spelt(last) {
		fmt.Println(ascent)
	}
	// Output:
	// 13.5 min, the least: true
	// [{2 0}]
	// [{0 0}]
	// [{1 0}]
}

// batch is a few jobs of one way each, some of which wait for earlier ones.
func batch(seed uint64) *model.Problem {
	random := rand.New(rand.NewPCG(seed, 7))
	p := &model.Problem{Minutes: minutes, Scale: measure.InchScale}
	for j := range 4 + random.IntN(5) {
		var after []int
		if j > 0 && random.IntN(4) > 0 {
			after = []int{random.IntN(j)}
		}
		p.Jobs = append(p.Jobs, job(random.IntN(3), measure.Length(1+random.IntN(3))*in, measure.Length(1+random.IntN(6))*in/8, after...))
	}
	return p
}

// An order that was searched through costs what trying every order finds, and no order
// is found below that.
func TestTheOrderIsTheCheapest(t *testing.T) {
	waited := 0
	for seed := range uint64(400) {
		p := batch(seed)
		m := model.New(p)
		least := brute.Least(p) - m.Fixed
		e := order.NewErrands(m, make([]int, len(m.Kinds)), m.Truly())
		b := budget.New(context.Background(), budget.Limit{})
		last, low := e.Order(order.NoLimit, b)
		require.NotNil(t, last, "seed %d", seed)
		require.Equal(t, least, e.Fixed+last.Spent, "seed %d", seed)
		require.Equal(t, low, last.Spent, "seed %d", seed)
		require.Equal(t, brute.Cost(p, make([]int, len(p.Jobs)), e.Spelt(last)), least+m.Fixed, "seed %d", seed)
		if e.Once() < last.Spent {
			waited++ // something had to be set twice
		}
	}
	assert.Greater(t, waited, 20, "else the search was asked nothing")
}

// Out of steps there is no order, and what is said to be the least is still no more than
// the least.
func TestOutOfSteps(t *testing.T) {
	p := batch(3)
	for len(p.Jobs[len(p.Jobs)-1].After) == 0 {
		p.Jobs = p.Jobs[:len(p.Jobs)-1]
	}
	m := model.New(p)
	e := order.NewErrands(m, make([]int, len(m.Kinds)), m.Truly())
	last, low := e.Order(order.NoLimit, budget.New(context.Background(), budget.Limit{Steps: 1}))
	assert.Nil(t, last)
	assert.LessOrEqual(t, e.Fixed+low, brute.Least(p)-m.Fixed)
}

// Whatever is taken out and put back, a sequence costs what it would if it were written
// down afresh, and nothing is made before what it waits for.
func TestASequenceKnowsItsCost(t *testing.T) {
	moved := 0
	for seed := range uint64(60) {
		m := model.New(batch(seed))
		ways := make([]int, len(m.Kinds))
		q := order.NewSequence(m)
		b := budget.New(context.Background(), budget.Limit{})
		e := order.NewErrands(m, ways, m.Truly())
		last := e.Quick(e.Start(), b)
		var visits []order.Visited
		for _, s := range e.Stays(last) {
			for _, a := range s.Ascents {
				v := order.Visited{Station: a.Station}
				for _, x := range a.List {
					v.Runs = append(v.Runs, e.List[x].Runs...)
				}
				visits = append(visits, v)
			}
		}
		q.Load(ways, visits)
		require.Equal(t, e.Fixed+last.Spent, q.Cost, "seed %d", seed)
		p := &order.Placing{Random: rand.New(rand.NewPCG(seed, 1)), B: b}
		for range 20 {
			kind, before, whole := p.Random.IntN(len(m.Kinds)), q.Cost, q.Spelt()
			q.TakeOut(kind)
			found, ok := q.Cheapest(kind, p)
			if !ok { // each place was passed over
				q.Load(ways, whole)
				continue
			}
			q.PutIn(kind, found)
			if q.Cost != before {
				moved++
			}
			fresh := order.NewSequence(m)
			fresh.Load(q.Way, q.Spelt())
			require.Equal(t, fresh.Cost, q.Cost, "seed %d", seed)
			at := map[int]int{}
			for i, s := range q.Stops {
				for _, r := range s.Runs {
					at[r.Kind] = i
				}
			}
			for k := range m.Kinds {
				require.False(t, slices.ContainsFunc(m.Kinds[k].After, func(before int) bool { return at[before] >= at[k] }), "seed %d", seed)
			}
		}
	}
	assert.Positive(t, moved)
}
