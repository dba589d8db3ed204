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
			w, bit := p.wants.find(c), p.bits[s.Bit.Name]
			if w == nil || bit == nil {
				break
			}
			t := table{c, bit.True(), w.piece.Size, w.piece.Size.Between(c.Leads), bit}
			return bench{t, s, w, bit, &plan.Shop, p.scale, p.paired(s, j)}, nil
		}
	}
	return bench{}, joinery.Faults{{
		Problem: fmt.Sprintf("the deck has no run %q", joinery.Brief(number, 24)),
		Remedy:  "write a run's number as it is printed, " + runNumbers(claims),
	}}
}

// paired is one run of a setup with the letter of its pair of marks, which the
// runs before it decide.
func (p *prover) paired(s *Setup, at int) deck.Run {
	of := deck.Setup{Number: s.Number, Bit: p.bits[s.Bit.Name], Fence: s.Fence, Carriage: s.Carriage}
	for j := range s.Cards[:at+1] {
		if w := p.wants.find(&s.Cards[j]); w != nil {
			of.Runs = append(of.Runs, p.cardBack(&s.Cards[j], w, &of, j+1))
		}
	}
	of.PairUp(&p.plan.Shop)
	return of.Runs[len(of.Runs)-1]
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
