package joint

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// seasons is how much a width of the entering piece along a dimension moves
// against the receiving one between the driest and the dampest air of the plan.
func (w *work) seasons(along joinery.Dimension, width measure.Length) measure.Length {
	part := w.swells(w.Part, along, width)
	return (part - w.swells(w.Into, along, min(width, w.Into.Size[along]))).Abs()
}

// swells is how much a piece moves along a dimension; 0 with a fault where that
// is not known.
func (w *work) swells(p *joinery.Piece, along joinery.Dimension, width measure.Length) measure.Length {
	moves, err := p.Swells(w.climate, along, width)
	if err != nil && len(w.faults) == 0 {
		w.fault("write a length in place of seasons", []string{"room"}, "how %q moves from season to season is not known: %v", p.Name, err)
	}
	return moves
}
