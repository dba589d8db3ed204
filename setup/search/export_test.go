package search

import "context"

// Improved puts the first ways in a good order and improves that, without proof.
func Improved(p *Problem) *Answer {
	s := &solver{m: newModel(p), b: newBudget(context.Background(), Limit{}), cost: noLimit}
	s.improve(s.quickly(make([]int, len(s.m.kinds))))
	return s.answer()
}
