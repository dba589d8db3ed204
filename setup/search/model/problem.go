package model

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
	"fencecard/setup/search/budget"
)

// Problem is a batch of jobs and what changing the table costs.
type Problem struct {
	Jobs    []Job
	Minutes joinery.Minutes
	Scale   measure.Scale // heights between depths lie on it
	Known   joinery.Time  // what an answer costs that is known; only cheaper ones are looked for; 0 for none
}

// Job is one channel and the ways to make it.
type Job struct {
	Ways  []Way // at least one; of equal ways the earlier is preferred
	After []int // jobs all of whose runs must be in earlier ascents; no circles
}

// Way is a chain of runs, each in an earlier ascent than the next.
type Way struct {
	Runs   []Run
	Turned bool  // both runs at one fence distance, in either order, at one visit
	Fits   []int // the trials of fit it needs, by number; each is made once by all who need it
}

// Run is one piece going once over the bit at every height of its ladder.
type Run struct {
	Bit    int // bits are numbered in the order they are preferred, from 0
	Fence  measure.Length
	Blocks int  // which stop blocks it needs, 0 for none; equal numbers are equal blocks
	Raised bool // the work stands on a carriage: it climbs another ladder than work that lies on the table
	Demand ladder.Demand
	Over   int // how often the work goes over the bit at each height: pieces times passes side by side
}

// JobRun names one run of the way chosen for a job.
type JobRun struct{ Job, Run int }

// Ascent is the runs made together, going up one ladder. They share the bit,
// the fence distance and the blocks.
type Ascent []JobRun

// Answer is a choice of ways and an order of ascents.
type Answer struct {
	Choice  []int        // the way of each job; nil where nothing cheaper than what is known was found
	Ascents []Ascent     // in running order
	Cost    joinery.Time // of the known answer where there is no choice
	Bound   joinery.Time // no answer costs less
	Ended   budget.Ended
}
