package setup

import (
	"slices"

	"fencecard/joinery"
	"fencecard/setup/ladder"
)

// Deal writes the setups and cards of a choice of ways in an order of visits.
//
// Between marks, all cards of a setup climb one ladder together. Between stop
// blocks, only the cards do whose blocks stand alike; these come one after
// another, and the rest of the setup waits until they are through. Visits in a
// row to one bit and fence distance are then one setup.
func Deal(plan *joinery.Plan, jobs []Job, choice Choice, visits []Visit) []Setup {
	var setups []Setup
	blocks := plan.Shop.Stops == joinery.Blocks
	for _, v := range visits {
		cards := make([]Card, len(v.Runs))
		for i, r := range v.Runs {
			job := jobs[r.Job]
			cards[i] = write(job, job.Ways[choice[r.Job]].Runs[r.Run], &plan.Shop)
		}
		n := len(setups)
		if !blocks || n == 0 || setups[n-1].Key() != v.Key {
			setups = append(setups, Setup{Number: n + 1, Bit: v.Key.Bit, Fence: FenceAt(v.Key.Bit, v.Key.NearEdge)})
		}
		s := &setups[len(setups)-1]
		if !blocks {
			climb(s, slices.Concat(together(cards, (*Card).Marks)...), plan.Shop.Scale)
			continue
		}
		for _, alike := range together(cards, (*Card).Blocks) {
			climb(s, alike, plan.Shop.Scale)
		}
	}
	for i := range setups {
		number(&setups[i])
	}
	return setups
}

// climb adds cards that go up one ladder together.
func climb(s *Setup, cards []Card, scale joinery.Scale) {
	climb := 0
	if n := len(s.Cards); n > 0 {
		climb = s.Cards[n-1].Climb + 1
	}
	demands := make([]ladder.Demand, len(cards))
	for i := range cards {
		demands[i] = demandOf(&cards[i])
	}
	heights := ladder.Of(demands, scale)
	s.Cards = slices.Grow(s.Cards, len(cards))
	for i, c := range cards {
		c.Climb, c.Heights = climb, ladder.Used(heights, demands[i])
		s.Cards = append(s.Cards, c)
	}
	s.Heights = append(s.Heights, heights...)
}

// number numbers the cards and sorts the heights of all climbs. The two runs of
// a turned piece may be made in either order: the first card is the first run.
func number(s *Setup) {
	type channel struct {
		cut  *joinery.Cut
		part string
	}
	turned := map[channel]int{}
	for i := range s.Cards {
		c := &s.Cards[i]
		c.Setup, c.Index = s.Number, i+1
		if c.Run.Turned {
			at := channel{c.Cut, c.Channel.Part}
			turned[at]++
			c.Run.Position = turned[at]
		}
	}
	slices.Sort(s.Heights)
	s.Heights = slices.Compact(s.Heights)
}

// demandOf is what a card asks of the ladder.
func demandOf(c *Card) ladder.Demand {
	return ladder.Demand{Depth: c.Channel.Depth, Cap: c.Cap.Depth}
}

// together keeps the order of the cards, but brings those that stand alike
// next to the first of them.
func together(cards []Card, where func(*Card) Stand) [][]Card {
	var groups [][]Card
	at := map[Stand]int{}
	for i := range cards {
		w := where(&cards[i])
		n, ok := at[w]
		if !ok {
			n = len(groups)
			at[w] = n
			groups = append(groups, nil)
		}
		groups[n] = append(groups[n], cards[i])
	}
	return groups
}
