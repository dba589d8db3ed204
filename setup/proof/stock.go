package proof

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// stock checks that what the plan wants lies inside its pieces: a run that
// follows a cut outside the wood, or one of no length, cuts nothing that the plan
// could be held to.
func (p *prover) stock() {
	for i := range p.plan.Pieces {
		piece := &p.plan.Pieces[i]
		for j := range piece.Cuts {
			for k := range piece.Cuts[j].Channels {
				w := wanted{piece: piece, cut: &piece.Cuts[j], channel: &piece.Cuts[j].Channels[k]}
				if what := p.outside(&w); what != "" {
					p.deck = append(p.deck, Difference{Piece: piece.Name, Cut: w.cut.Name, Field: "plan",
						Text: fmt.Sprintf("the plan's %s %s", w.name(), what)})
				}
			}
		}
	}
}

// outside tells what of a channel is no part of its piece, or "".
func (p *prover) outside(w *wanted) string {
	c := w.channel
	if c.Down == joinery.NoSide || c.Near == joinery.NoSide || c.Down.Dimension() == c.Near.Dimension() {
		return "names no two sides that meet"
	}
	// By each dimension from where to where it goes, and past which side it may not.
	for _, part := range [...]struct {
		what     string
		from, to measure.Length
		side     joinery.Side
	}{
		{"is entered", 0, c.Depth, c.Down},
		{"lies", c.Setback, c.Setback + c.Width, c.Near},
		{"runs", c.Lo, c.Hi, c.Run().Low()},
	} {
		size := w.piece.Size.Between(part.side)
		switch {
		case part.from >= part.to:
			return fmt.Sprintf("%s from %s to %s from the %s, which is nothing", part.what, p.text(part.from), p.text(part.to), part.side)
		case part.from < 0:
			return fmt.Sprintf("%s %s outside the piece at the %s", part.what, p.text(-part.from), part.side)
		case part.to > size:
			return fmt.Sprintf("%s %s outside the piece at the %s", part.what, p.text(part.to-size), part.side.Opposite())
		}
	}
	return ""
}
