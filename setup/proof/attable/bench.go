// Package attable puts what a maker measured to a deck that proves: the table as it
// stands ([AsSet]), and a test cut ([Correct]). It says what the cut would be, what to
// move and how far, and asks where a measure would be right from another edge.
package attable

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/proof"
)

// bench is one run of a deck, ready to be cut, and the deck's setups.
type bench struct {
	proof.Standing
	setups []proof.Setup
}

// benchFor finds a run by its number.
func benchFor(plan *joinery.Plan, claims *proof.Claims, number string) (bench, error) {
	s, err := proof.StandingRun(plan, claims, number)
	return bench{s, claims.Setups}, err
}

// text is a length in the shop's unit, whatever unit was measured in.
func (b bench) text(l measure.Length) string {
	if !b.Scale.On(l) {
		return b.Scale.Fine(l) + " " + b.Scale.Unit.String()
	}
	return proof.Say(b.Scale, l)
}

// right reports whether two lengths are one on the shop's scale: half a division
// is not wrong.
func (b bench) right(a, c measure.Length) bool { return 2*(a-c).Abs() <= b.Scale.Division }

// open tells on which sides this run leaves no wall. One that nibbles takes all
// that is between the fence and its far edge.
func (b bench) open() (near, far bool) {
	n := b.Setup.Fence.NearEdge
	return n <= 0 || b.Claimed.Nibble != nil, n+b.Bit >= b.Size.Between(b.Claimed.Fence)
}

// farWall is what the wall away from the fence is called.
func (b bench) farWall() string {
	if b.Claimed.Nibble != nil {
		return "shoulder"
	}
	return "far wall"
}
