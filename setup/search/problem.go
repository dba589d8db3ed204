// Package search finds the cheapest way to run a batch: for every cut a way to
// make it, and for all of them an order, so that changing bits, setting the
// fence, setting heights and setting stop blocks take the least time. It proves
// the least, or says how far below its answer the least can be.
//
// It knows nothing of wood. A [Problem] has jobs; a [Job] has ways; a way is a
// chain of runs over the bit; a run needs a bit, a fence distance, perhaps stop
// blocks, and a height to climb to. Runs made together climb one ladder: a
// [Climb]. A change costs time whenever a climb needs another bit, fence
// distance or pair of blocks than the climb before it, and every climb sets
// each height of its ladder.
//
// [Solve] works in three steps. Without regard to order, choosing ways is a
// matter of sharing: every bit, fence distance and height is paid once by all
// who use it. That choice is found by branch and bound (chooser.go, fork.go),
// the bound being shares of each cost put on the jobs that may need it
// (shares.go); ladders enter it by regions of height that need a rung (region.go).
// Then the runs are ordered at the least cost that After allows, the most
// promising order gone on from first (order.go, trips.go, tails.go). Where the
// order costs nothing more the answer is proved; where it does, a second branch
// and bound weighs other ways for the jobs that wait for one another (knot.go).
// Big problems are mended a few jobs at a time (mend.go, reorder.go), and the
// bound says how much better an answer could be.
//
// All arithmetic is in whole numbers and nothing depends on the clock as long
// as the steps last, so the answer is the same on every machine.
package search

import (
	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// Problem is a batch of jobs and what changing the table costs.
type Problem struct {
	Jobs    []Job
	Minutes joinery.Minutes
	Scale   joinery.Scale // heights between depths lie on it
	Known   joinery.Time  // what an answer costs that is known; only cheaper ones are looked for; 0 for none
}

// Job is one channel and the ways to make it.
type Job struct {
	Ways  []Way // at least one; of equal ways the earlier is preferred
	After []int // jobs all of whose runs must be in earlier climbs; no circles
}

// Way is a chain of runs, each in an earlier climb than the next.
type Way struct {
	Runs   []Run
	Turned bool // both runs at one fence distance, in either order, at one visit
}

// Run is one trip over the bit.
type Run struct {
	Bit    int // bits are numbered in the order they are preferred, from 0
	Fence  joinery.Length
	Blocks int // which stop blocks it needs, 0 for none; equal numbers are equal blocks
	Demand ladder.Demand
}

// JobRun names one run of the way chosen for a job.
type JobRun struct{ Job, Run int }

// Climb is the runs made together, going up one ladder. They share the bit,
// the fence distance and the blocks.
type Climb []JobRun

// Cost returns the time a choice of ways takes in an order of climbs.
func (p *Problem) Cost(choice []int, climbs []Climb) joinery.Time {
	var total joinery.Time
	var last *Run
	for _, climb := range climbs {
		demands := make([]ladder.Demand, len(climb))
		var run *Run
		for i, r := range climb {
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
		total += joinery.Time(len(ladder.Of(demands, p.Scale))) * p.Minutes.Height
		last = run
	}
	return total
}

// Answer is a choice of ways and an order of climbs.
type Answer struct {
	Choice []int        // the way of each job; nil where nothing cheaper than what is known was found
	Climbs []Climb      // in running order
	Cost   joinery.Time // of the known answer where there is no choice
	Bound  joinery.Time // no answer costs less
	Ended  Ended
}

// Proved reports whether no answer costs less.
func (a *Answer) Proved() bool { return a.Bound >= a.Cost }
