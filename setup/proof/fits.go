package proof

import "fencecard/joinery"

// fit is a width that comes from two settings of one bit: two fence distances,
// or one and the piece turned. It is tried once.
type fit struct {
	bit         string
	first, last joinery.Length
}

// fit notes the width of a channel between two walls where it takes more than
// one run.
func (p *prover) fit(w *wanted) {
	ch, size := w.channel, w.piece.Size
	if len(w.runs) < 2 || ch.OpenBeside(ch.Near, size) || ch.OpenBeside(ch.Near.Opposite(), size) {
		return
	}
	first, last := w.runs[0], w.runs[len(w.runs)-1]
	p.fits[fit{p.claims.Setups[first.setup].Bit.Name, first.fence.NearEdge, last.fence.NearEdge}] = true
}
