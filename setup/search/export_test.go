package search

import (
	"context"

	"fencecard/setup/search/budget"
	"fencecard/setup/search/model"
	"fencecard/setup/search/order"
)

// Improved puts the first ways in a good order and improves that, without proof.
func Improved(p *model.Problem) *model.Answer {
	s := &solver{m: model.New(p), b: budget.New(context.Background(), budget.Limit{}), cost: order.NoLimit}
	s.improve(s.quickly(make([]int, len(s.m.Kinds))))
	return s.answer()
}
