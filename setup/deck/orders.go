package deck

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Orders is all that a maker is told to do with the work in one run, whichever
// piece it is: runs of equal orders read the same.
type Orders struct {
	Down, Fence, Leads string // as the sides are called at the bench
	Stand
	guided   bool
	nibble   Nibble
	heights  string
	squared  bool
	carriage measure.Length
}

// Orders returns the run's orders.
func (r *Run) Orders() Orders {
	o := Orders{
		Down: r.Shown(r.Step.Down), Fence: r.Shown(r.Step.Fence), Leads: r.Shown(r.Leads),
		Stand: r.Marks(), guided: r.Guided, heights: fmt.Sprint(r.Heights), carriage: r.Step.Carriage,
		squared: r.Cut.Square && (r.Start != nil || r.Stop != nil),
	}
	if r.Nibble != nil {
		o.nibble = *r.Nibble
	}
	return o
}

// Shown is what a side of the run's piece is called at the bench: by the name that
// is pencilled on it, else by its own.
func (r *Run) Shown(side joinery.Side) string { return r.Piece.Called.Name(side) }
