package search

import (
	"slices"

	"fencecard/setup/search/model"
	"fencecard/setup/search/order"
)

// mostPreferred bounds how many kinds that wait are gone through for ways that
// a maker would rather have; each takes an order of its own.
const mostPreferred = 300

// prefer goes back to the earlier ways where that costs nothing: they are what
// a maker would expect. It tries other bits for all that one bit makes, then
// other ways for single kinds.
func (s *solver) prefer() {
	p := &preferrer{s, newTally(s.m), slices.Clone(s.choice)}
	for k, w := range p.choice {
		p.t.add(&s.m.Kinds[k].Ways[w])
	}
	for b := range s.m.Bits {
		for other := range s.m.Bits {
			p.swap(b, other)
		}
	}
	for k := range p.choice {
		for w := range p.choice[k] {
			if p.change([]pick{{k, w}}) {
				break
			}
		}
	}
	if !s.m.Tied {
		order, _ := s.inOrder(p.choice, order.NoLimit)
		s.keep(p.choice, order)
	}
}

// preferrer is a choice on its way to one that a maker would rather have.
type preferrer struct {
	s      *solver
	t      *tally
	choice []int
}

// swap moves what one bit makes to another, if that is preferred on the whole
// and costs no more.
func (p *preferrer) swap(from, to int) {
	var picks []pick
	sooner := 0 // by how many places the ways come earlier
	for k, w := range p.choice {
		if p.bit(k, w) != from {
			continue
		}
		other := slices.IndexFunc(p.s.m.Kinds[k].Ways, func(w model.ReadyWay) bool { return p.s.m.Stations[w.Runs[0].Station].Bit == to })
		if other < 0 {
			return
		}
		picks = append(picks, pick{k, other})
		sooner += w - other
	}
	if sooner > 0 {
		p.change(picks)
	}
}

func (p *preferrer) bit(kind, way int) int {
	return p.s.m.Stations[p.s.m.Kinds[kind].Ways[way].Runs[0].Station].Bit
}

// change takes other ways if they cost no more.
func (p *preferrer) change(picks []pick) bool {
	m := p.s.m
	before, other := p.t.cost(), slices.Clone(p.choice)
	for _, c := range picks {
		p.t.remove(&m.Kinds[c.kind].Ways[other[c.kind]])
		other[c.kind] = c.way
		p.t.add(&m.Kinds[c.kind].Ways[c.way])
	}
	if p.t.cost() <= before && p.orders(other) {
		p.choice = other
		return true
	}
	for _, c := range picks {
		p.t.remove(&m.Kinds[c.kind].Ways[c.way])
		p.t.add(&m.Kinds[c.kind].Ways[p.choice[c.kind]])
	}
	return false
}

// orders reports whether another choice can be put in order at no more cost,
// and keeps that order.
func (p *preferrer) orders(choice []int) bool {
	if !p.s.m.Tied {
		return true
	}
	if len(choice) > mostPreferred || !p.s.b.Spend(100*len(choice)) {
		return false
	}
	order, _ := p.s.inOrder(choice, p.s.cost+1)
	if order.last == nil || order.cost() > p.s.cost {
		return false
	}
	p.s.keep(choice, order)
	return true
}
