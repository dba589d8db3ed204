package setup

import (
	"slices"

	"fencecard/joinery"
)

// Climb is the cards of a setup that go up one ladder together, height by
// height. Between marks a setup has one climb. Between stop blocks it has one
// for every setting of the blocks, and is through with one before the next.
type Climb struct {
	Cards   []Card
	Heights []joinery.Length // climbing
	Blocks  bool             // a card starts or stops inside the work, so that blocks must be set
}

// Climbs returns the setup's climbs in running order.
func (s *Setup) Climbs() []Climb {
	var climbs []Climb
	for i := range s.Cards {
		c := &s.Cards[i]
		if i == 0 || c.Climb != s.Cards[i-1].Climb {
			climbs = append(climbs, Climb{Cards: s.Cards[i:i], Blocks: c.Blocks() != (Stand{})})
		}
		last := &climbs[len(climbs)-1]
		last.Cards = last.Cards[:len(last.Cards)+1]
		last.Heights = append(last.Heights, c.Heights...)
	}
	for i := range climbs {
		slices.Sort(climbs[i].Heights)
		climbs[i].Heights = slices.Compact(climbs[i].Heights)
	}
	return climbs
}
