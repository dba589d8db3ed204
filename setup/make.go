package setup

import "fencecard/joinery"

// Make turns a plan into a deck: it finds the ways to make every channel,
// chooses among them, groups the runs into setups, orders these and writes the
// cards. The error holds every fault that stops the deck, as [joinery.Faults].
func Make(plan *joinery.Plan) (*Deck, error) {
	jobs, err := Jobs(plan)
	if err != nil {
		return nil, err
	}
	choice := make(Choice, len(jobs)) // the best way stands first
	visits, ok := PlainOrder(jobs, choice)
	if !ok {
		return nil, joinery.Faults{{Place: plan.Place,
			Problem: "some cuts wait for each other in a circle", Remedy: "take one `after` away"}}
	}
	d := &Deck{Plan: plan, Setups: Deal(plan, jobs, choice, visits)}
	d.Changes = Count(d.Setups, plan.Shop.Minutes)
	d.Warnings = append(warn(d), d.join()...)
	d.Caution()
	return d, nil
}

// Deal writes the setups and cards of a choice of ways in an order of visits.
func Deal(plan *joinery.Plan, jobs []Job, choice Choice, visits []Visit) []Setup {
	setups := make([]Setup, len(visits))
	for i, v := range visits {
		s := &setups[i]
		*s = Setup{Number: i + 1, Bit: v.Key.Bit, Fence: FenceAt(v.Key.Bit, v.Key.NearEdge)}
		demands := make([]Demand, len(v.Runs))
		for k, r := range v.Runs {
			job := jobs[r.Job]
			card := write(job, job.Ways[choice[r.Job]].Runs[r.Run], &plan.Shop)
			s.Cards = append(s.Cards, card)
			demands[k] = card.demand()
		}
		s.Heights = Ladder(demands, plan.Shop.Scale)
		s.Cards = sameMarksTogether(s.Cards)
		for k := range s.Cards {
			c := &s.Cards[k]
			c.Setup, c.Index = s.Number, k+1
			c.Heights = Rungs(s.Heights, c.demand())
		}
	}
	return setups
}

// write makes the card of one run, but for its number and heights.
func write(job Job, run Run, shop *joinery.Shop) Card {
	c := CardOf(job.Piece, job.Cut, job.Channel, run)
	c.Cap = CapFor(run.Bit, job.Piece.Wood, shop)
	return c
}

// CardOf writes what the geometry of one run decides: which end leads and
// where the work stands at the start and the stop. Number, heights and cap are
// left to the caller.
func CardOf(p *joinery.Piece, cut *joinery.Cut, ch joinery.Channel, run Run) Card {
	c := Card{Piece: p, Cut: cut, Channel: ch, Run: run, Leads: Leads(run.Fence, run.Down)}
	d := run.Bit.True()
	c.Length = p.Size.Between(c.Leads)
	c.A, c.B = ends(ch, c.Leads, c.Length)
	if c.A > 0 {
		c.Begin, c.Start = Drop, startMark(c.A, c.Length, d)
	}
	if c.B < c.Length {
		c.End, c.Stop = Lift, stopMark(c.B, c.Length, d)
	}
	return c
}

func (c *Card) demand() Demand { return Demand{c.Channel.Depth, c.Cap.Depth} }

// sameMarksTogether keeps the plan's order, but brings cards with the same
// marks next to the first of them, so that a mark is set once.
func sameMarksTogether(cards []Card) []Card {
	type marks struct {
		begin       Begin
		end         End
		start, stop joinery.Length
	}
	var order []marks
	groups := map[marks][]Card{}
	for _, c := range cards {
		m := marks{begin: c.Begin, end: c.End}
		if c.Start != nil {
			m.start = c.Start.LeadPastEdge
		}
		if c.Stop != nil {
			m.stop = c.Stop.LeadPastEdge
		}
		if groups[m] == nil {
			order = append(order, m)
		}
		groups[m] = append(groups[m], c)
	}
	sorted := make([]Card, 0, len(cards))
	for _, m := range order {
		sorted = append(sorted, groups[m]...)
	}
	return sorted
}
