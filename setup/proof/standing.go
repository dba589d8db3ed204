package proof

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// Standing is one run of a deck as it stands on the table, ready to be cut.
type Standing struct {
	Claimed *Run
	Setup   *Setup
	Cut     *joinery.Cut
	Channel *joinery.Channel
	Tool    *joinery.Bit
	Bit     measure.Length // its true diameter
	Size    joinery.Size
	Long    measure.Length // of the work along the feed, from the plan
	Shop    *joinery.Shop
	Scale   measure.Scale
	Run     deck.Run // with the letters of its pair of marks
}

// StandingRuns readies every run of a deck that can be cut.
func StandingRuns(plan *joinery.Plan, claims *Claims) []Standing {
	var all []Standing
	p := newProver(plan, claims)
	for i := range claims.Setups {
		s := &claims.Setups[i]
		runs := p.paired(s, len(s.Runs)-1)
		for j := range s.Runs {
			if b, ok := p.stand(s, j); ok && j < len(runs) {
				b.Run = runs[j]
				all = append(all, b)
			}
		}
	}
	return all
}

// StandingRun readies a run by its number.
func StandingRun(plan *joinery.Plan, claims *Claims, number string) (Standing, error) {
	p := newProver(plan, claims)
	for i := range claims.Setups {
		s := &claims.Setups[i]
		for j := range s.Runs {
			c := &s.Runs[j]
			if c.Number != number {
				continue
			}
			b, ok := p.stand(s, j)
			if !ok {
				break
			}
			runs := p.paired(s, j)
			b.Run = runs[len(runs)-1]
			return b, nil
		}
	}
	return Standing{}, plantext.Faults{{
		Problem: fmt.Sprintf("the deck has no run %q", plantext.Brief(number, 24)),
		Remedy:  "write a run's number as it is printed, " + runNumbers(claims),
	}}
}

// stand readies one run of a setup, but for its pair.
func (p *prover) stand(s *Setup, at int) (Standing, bool) {
	c := &s.Runs[at]
	w, bit := p.wants.find(c), p.bits[s.Bit.Name]
	if w == nil || bit == nil {
		return Standing{}, false
	}
	t := onTable(c, s.Fence, w, bit)
	return Standing{c, s, w.cut, w.channel, bit, t.bit, t.size, t.long, &p.plan.Shop, p.scale, deck.Run{}}, true
}

// paired are the runs of a setup up to one, with the letters of their pairs of
// marks, which the runs before each decide.
func (p *prover) paired(s *Setup, last int) []deck.Run {
	of := deck.Setup{Number: s.Number, Bit: p.bits[s.Bit.Name], Fence: s.Fence, Carriage: s.Carriage}
	for j := range s.Runs[:last+1] {
		if w := p.wants.find(&s.Runs[j]); w != nil {
			of.Runs = append(of.Runs, p.runBack(&s.Runs[j], w, &of, j+1))
		}
	}
	of.PairUp(&p.plan.Shop)
	return of.Runs
}

// runNumbers tells the numbers a deck has, as a range for each setup.
func runNumbers(claims *Claims) string {
	var ranges []string
	for _, s := range claims.Setups {
		switch n := len(s.Runs); n {
		case 0:
		case 1:
			ranges = append(ranges, s.Runs[0].Number)
		default:
			ranges = append(ranges, fmt.Sprintf("%s to %s", s.Runs[0].Number, s.Runs[n-1].Number))
		}
	}
	const most = 8
	if len(ranges) > most {
		ranges = append(ranges[:most], "and so on")
	}
	return strings.Join(ranges, ", ")
}
