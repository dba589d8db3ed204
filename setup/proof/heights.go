package proof

import (
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// mostPasses is how many passes of one run are told of.
const mostPasses = 20

// heights compares the last height with the plan's depth, and the steps to it
// with what the bit may take in that wood at one pass.
func (p *prover) heights(at int, t table, w *wanted, s *Setup, most ladder.Cap, over *wanted) {
	c := t.claim
	if len(c.Heights) == 0 {
		p.wrongRun(at, "heights", 0, "the run has no height, so nothing would be cut")
		return
	}
	if h, ok := ascend(c.Heights); !ok {
		p.wrongRun(at, "heights", 0, "the height %s does not climb above the one before it", p.text(h))
	}
	deep := c.Heights[len(c.Heights)-1]
	if off := deep - w.channel.Depth; off.Abs() > hair {
		p.wrongRun(at, "heights", off, "the %s would be %s too %s", w.cut.Kind, p.text(off.Abs()), DeepOrShallow(off))
	}
	strange, first := 0, measure.Length(0)
	for _, h := range c.Heights {
		if !slices.Contains(s.Heights, h) {
			if strange++; strange == 1 {
				first = h
			}
		}
	}
	if strange > 0 {
		p.wrongRun(at, "heights", 0, "the height %s is not among those of setup %d%s", p.text(first), s.Number, andMore(strange, "nor are"))
	}
	if w.channel.Section.Shaped() {
		p.allowed(at, c, most)
		return // the wood of its passes is weighed with those of its other runs
	}
	p.passes(at, c, w, most, over)
}

// passes checks that no pass takes more than the bit may.
func (p *prover) passes(at int, c *Run, w *wanted, most ladder.Cap, over *wanted) {
	p.allowed(at, c, most)
	if len(c.Areas) > 0 {
		p.wrongRun(at, "areas", 0, "the run gives areas, but shapes no edge")
	}
	from := measure.Length(0)
	if over != nil {
		if from = over.channel.Depth; len(c.Heights) > 0 && c.Heights[0] <= from {
			p.wrongRun(at, "heights", 0, "the pass to %s cuts nothing: the %s is that deep", p.text(c.Heights[0]), over.words(w))
		}
	}
	told := 0
	for _, h := range c.Heights {
		// A run of a hundred such passes is no better known than one of a few.
		if over := h - from - most.Depth; over > hair && told < mostPasses {
			told++
			p.wrongRun(at, "heights", over, "the pass to %s takes %s, %s more than the bit may: %s",
				p.text(h), p.text(h-from), p.text(over), most.Rule)
		}
		from = h
	}
}

// allowed compares what the run allows at one pass with what the shop does.
func (p *prover) allowed(at int, c *Run, most ladder.Cap) {
	if c.says(NoCap) && differ(c.Cap, most.Depth) {
		p.wrongRun(at, "cap", c.Cap-most.Depth, "the run allows %s at one pass, but it is %s: %s", p.text(c.Cap), p.text(most.Depth), most.Rule)
	}
	if c.says(NoCapRule) && c.CapRule != most.Rule {
		p.wrongRun(at, "cap rule", 0, "the run gives %q for the depth of one pass, the shop %q", c.CapRule, most.Rule)
	}
}

// limits checks that the bit and the table can do what the run asks.
func (p *prover) limits(at int, t table, w *wanted, bit *joinery.Bit, s *Setup, over *wanted) {
	c, shop := t.claim, &p.plan.Shop
	deep := measure.Length(0)
	if n := len(c.Heights); n > 0 {
		deep = c.Heights[n-1]
	}
	switch {
	case bit.Cutting > 0 && deep > bit.Cutting && (over == nil || over.cut != w.cut || !shankEnters(bit, deep, over.channel, w.channel)):
		p.wrongRun(at, "bit", deep-bit.Cutting, "the %s bit cuts only %s deep", bit.Name, p.text(bit.Cutting))
	case shop.Opening > 0 && bit.True() > shop.Opening:
		p.wrongRun(at, "bit", bit.True()-shop.Opening, "table and fence let no bit over %s turn", p.text(shop.Opening))
	case shop.Lift > 0 && deep+s.Carriage > shop.Lift:
		p.wrongRun(at, "heights", deep+s.Carriage-shop.Lift, "the table lifts a bit only %s", p.text(shop.Lift))
	case s.Carriage > 0 && bit.Shank > t.bit && bit.Cutting > 0 && deep+s.Carriage > bit.Cutting:
		p.wrongRun(at, "bit", 0, "the shank of the %s bit is thicker than the bit and would turn in the base of the carriage", bit.Name)
	case shop.Fence.Reach > 0 && s.Fence.NearEdge+t.half() > shop.Fence.Reach:
		p.wrongRun(at, "fence", 0, "the fence reaches only %s from the bit's centre", p.text(shop.Fence.Reach))
	case bit.IsPanelBit() && (c.Start != nil || c.Stop != nil):
		p.wrongRun(at, "begin", 0, "work is never lowered onto a panel bit, nor stopped on it")
	case c.Begin == deck.Drop && bit.Plunges == joinery.No && !w.cut.Bored:
		p.wrongRun(at, "begin", 0, "the work is dropped onto the %s bit, which does not plunge", bit.Name)
	}
}

// DeepOrShallow says which way a depth is off.
func DeepOrShallow(off measure.Length) string {
	if off > 0 {
		return "deep"
	}
	return "shallow"
}
