package proof

import (
	"fencecard/joinery/measure"
)

// fit is a width that comes from two settings of one bit: two fence distances,
// or one and the piece turned. It is tried once.
type fit struct {
	bit         string
	first, last measure.Length
}

// fit notes the width of a channel between two walls where it takes more than
// one run.
func (p *prover) fit(w *wanted) {
	ch, size := w.channel, w.piece.Size
	if len(w.runs) == 0 || ch.OpenBeside(ch.Near, size) || ch.OpenBeside(ch.Near.Opposite(), size) {
		return
	}
	first, last := w.runs[0], w.runs[len(w.runs)-1]
	if p.claims.Part {
		p.fitOfPart(w, first)
		return
	}
	if len(w.runs) < 2 {
		return
	}
	p.fits[fit{p.claims.Setups[first.setup].Bit.Name, first.fence.NearEdge, last.fence.NearEdge}] = true
}

// fitOfPart notes the width by one of its runs; the others may be elsewhere.
func (p *prover) fitOfPart(w *wanted, r run) {
	c, ch := r.claim, w.channel
	if c.Positions < 2 {
		return
	}
	f := fit{p.claims.Setups[r.setup].Bit.Name, r.fence.NearEdge, r.fence.NearEdge}
	if !c.Turned {
		f.first = ch.Setback
		if c.Fence != ch.Near {
			f.first = w.piece.Size.Between(ch.Near) - ch.Setback - ch.Width
		}
		f.last = f.first + ch.Width - r.bit
	}
	p.fits[f] = true
}
