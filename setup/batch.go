package setup

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/plantext"
)

// mostInBatch bounds the pieces of one kind in a batch; it keeps tallies and
// counts far from overflow.
const mostInBatch = 100_000

// Batch returns the plan for n pieces of work in place of one: the count of
// every piece multiplied. The plan given is not changed. N below 1, or more
// than 100,000 pieces of one kind, is a fault.
func Batch(plan *joinery.Plan, n int) (*joinery.Plan, error) {
	if n < 1 {
		return nil, plantext.Faults{{
			Problem: fmt.Sprintf("a batch of %d", n), Remedy: "a batch is 1 or more, such as --batch 12"}}
	}
	var faults plantext.Faults
	batch := *plan
	batch.Pieces = slices.Clone(plan.Pieces)
	for i := range batch.Pieces {
		p := &batch.Pieces[i]
		if p.Count > mostInBatch/n {
			faults.Add(plantext.Fault{
				Place:   p.Places.At(p.Place, "count"),
				Problem: fmt.Sprintf("a batch of %d makes too many of %q", n, p.Name),
				Remedy:  fmt.Sprintf("of one piece there can be %d at the most", mostInBatch),
			})
			continue
		}
		p.Count *= n
	}
	return &batch, faults.Err()
}
