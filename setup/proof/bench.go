package proof

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// bench is one run of a deck, ready to be cut.
type bench struct {
	table
	setup *Setup
	cut   *wanted
	tool  *joinery.Bit
	shop  *joinery.Shop
	scale joinery.Scale
	run   deck.Run
}

// benchFor finds a run by its number.
func benchFor(plan *joinery.Plan, claims *Claims, number string) (bench, error) {
	p := newProver(plan, claims)
	for i := range claims.Setups {
		s := &claims.Setups[i]
		for j := range s.Cards {
			c := &s.Cards[j]
			if c.Number != number {
				continue
			}
			b, ok := p.bench(s, j)
			if !ok {
				break
			}
			runs := p.paired(s, j)
			b.run = runs[len(runs)-1]
			return b, nil
		}
	}
	return bench{}, joinery.Faults{{
		Problem: fmt.Sprintf("the deck has no run %q", joinery.Brief(number, 24)),
		Remedy:  "write a run's number as it is printed, " + runNumbers(claims),
	}}
}

// bench readies one card of a setup, but for its pair.
func (p *prover) bench(s *Setup, at int) (bench, bool) {
	c := &s.Cards[at]
	w, bit := p.wants.find(c), p.bits[s.Bit.Name]
	if w == nil || bit == nil {
		return bench{}, false
	}
	t := onTable(c, s.Fence, w, bit)
	return bench{table: t, setup: s, cut: w, tool: bit, shop: &p.plan.Shop, scale: p.scale}, true
}

// paired are the runs of a setup up to one, with the letters of their pairs of
// marks, which the runs before each decide.
func (p *prover) paired(s *Setup, last int) []deck.Run {
	of := deck.Setup{Number: s.Number, Bit: p.bits[s.Bit.Name], Fence: s.Fence, Carriage: s.Carriage}
	for j := range s.Cards[:last+1] {
		if w := p.wants.find(&s.Cards[j]); w != nil {
			of.Runs = append(of.Runs, p.cardBack(&s.Cards[j], w, &of, j+1))
		}
	}
	of.PairUp(&p.plan.Shop)
	return of.Runs
}

// runNumbers tells the numbers a deck has, as a range for each setup.
func runNumbers(claims *Claims) string {
	var ranges []string
	for _, s := range claims.Setups {
		switch n := len(s.Cards); n {
		case 0:
		case 1:
			ranges = append(ranges, s.Cards[0].Number)
		default:
			ranges = append(ranges, fmt.Sprintf("%s to %s", s.Cards[0].Number, s.Cards[n-1].Number))
		}
	}
	const most = 8
	if len(ranges) > most {
		ranges = append(ranges[:most], "and so on")
	}
	return strings.Join(ranges, ", ")
}

// text is a length in the shop's unit, whatever unit was measured in.
func (b bench) text(l joinery.Length) string {
	if !b.scale.On(l) {
		return b.scale.Fine(l) + " " + b.scale.Unit.String()
	}
	return lengthText(b.scale, l)
}

// right reports whether two lengths are one on the shop's scale: half a division
// is not wrong.
func (b bench) right(a, c joinery.Length) bool { return 2*(a-c).Abs() <= b.scale.Division }

// open tells on which sides this run leaves no wall. One that nibbles takes all
// that is between the fence and its far edge.
func (b bench) open() (near, far bool) {
	n := b.setup.Fence.NearEdge
	return n <= 0 || b.card.Nibble != nil, n+b.bit >= b.size.Between(b.card.Fence)
}

// farWall is what the wall away from the fence is called.
func (b bench) farWall() string {
	if b.card.Nibble != nil {
		return "shoulder"
	}
	return "far wall"
}
