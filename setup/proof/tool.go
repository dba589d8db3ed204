package proof

import (
	"fencecard/joinery"
	"fencecard/joinery/timber"
	"fencecard/setup/ladder"
)

// tool is the bit of a setup, nil where the shop has none. It remembers what
// that may take at one pass in the wood it was last asked for, as most of a
// deck is of one wood.
type tool struct {
	bit  *joinery.Bit
	wood *timber.Wood
	most ladder.Cap
}

// cap returns what the bit may take at one pass in a wood.
func (t *tool) cap(wood *timber.Wood, shop *joinery.Shop) ladder.Cap {
	if t.wood == nil || *t.wood != *wood {
		t.wood, t.most = wood, ladder.CapFor(t.bit, *wood, shop)
	}
	return t.most
}

// cap returns what a run's bit may take at one pass: by the plan, or where that is
// no longer known as the run says.
func (p *prover) cap(c *Run, t *tool, w *wanted) ladder.Cap {
	if p.claims.FromBook && c.Cap > 0 {
		return ladder.Cap{Depth: c.Cap, Rule: c.CapRule}
	}
	return t.cap(&w.piece.Wood, &p.plan.Shop)
}
