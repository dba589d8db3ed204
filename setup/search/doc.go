// Package search finds the cheapest way to run a batch: for every cut a way to
// make it, and for all of them an order, so that changing bits, setting the
// fence, setting heights and setting stop blocks take the least time. It proves
// the least, or says how far below its answer the least can be.
//
// It knows nothing of wood. A [model.Problem] has jobs; a [model.Job] has ways; a way is a
// chain of runs over the bit; a run needs a bit, a fence distance, perhaps stop
// blocks, and a ladder that brings the bit to its full depth. Runs made together
// go up one ladder: a [model.Ascent]. A change costs time whenever an ascent needs
// another bit, fence distance or pair of blocks than the one before it, and every
// ascent sets each height of its ladder. Every pass of a run costs time, and so
// does a trial of fit, once for all ways that need it.
//
// [Solve] works in steps. Without regard to order, choosing ways is a
// matter of sharing: every bit, fence distance and height is paid once by all
// who use it. That choice is found by branch and bound (chooser.go, fork.go),
// the bound being shares of each cost put on the jobs that may need it
// (shares.go); ladders enter it by regions of height that need a rung (model/region.go),
// passes by the fewest that a run's cap asks for (model/cutting.go). What a ladder shared
// by many costs beyond that is counted where runs are put together (model/visit.go).
// Then the runs are ordered at the least cost that After allows, the most
// promising order gone on from first (package order). Where the
// order costs nothing more the answer is proved; where it does, a second branch
// and bound weighs other ways for the jobs that wait for one another (knot.go).
// Answers to big problems are improved by taking a few jobs out and putting each
// back where it is cheapest (improve.go, order/insertion.go, order/sequence.go), and the bound
// says how much better an answer could be.
//
// All arithmetic is in whole numbers and nothing depends on the clock as long
// as the steps last, so the answer is the same on every machine.
//
// # Words
//
// The words here are a maker's where there is one. To those who know the field:
//
//	ascent      runs made together, going up one ladder: a batch on one machine setting
//	branch      a subproblem of the branch and bound
//	chain       the longest chain from an errand to the end, counted in settings
//	coin        the greatest common divisor of all costs, by which bounds are rounded up
//	element     what is paid once by all who use it: a facility with an opening cost
//	errand      a run of a chosen way, to be put in order: a node of the precedence graph
//	fork        a branch on opening a facility or leaving it closed
//	group       jobs that wait for one another: a connected component of the precedence graph
//	improvement a large-neighbourhood search, with threshold accepting
//	insertion   the repair step of that: cheapest places by dynamic programming
//	island      a connected component of what is still undecided
//	key, stay   a bit at a fence distance; the ascents made there without moving the fence
//	kind        jobs that are alike: an equivalence class, by symmetry decided once
//	knot        the branch and bound with precedence
//	prefer      ties broken lexicographically among optimal solutions
//	region      an interval of height that must be stabbed by a rung: a clique of a cover
//	sequence    a solution whose parts can be taken out and put back at incremental cost
//	shares      Lagrange multipliers, raised by the subgradient method
//	station     a key with its stop blocks: what the runs of an ascent have in common
//	surcharge   what precedence costs beyond the relaxation without it
//	tally       the cost of a growing and shrinking choice, kept up incrementally
//	tied        having predecessors or successors in the precedence graph
//	trail       a partial sequence, a node of the best-first search (A*)
//	visit       the best partition into ascents of runs made at one station
//	way         an alternative mode of a job, a chain of operations
package search
