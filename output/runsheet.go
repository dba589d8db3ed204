package output

import (
	"fmt"

	"fencecard/setup"
)

// runSheet lists the setups in their order.
func (s setter) runSheet(d *setup.Deck) block {
	body := Letters{Height: 3.5}
	b := phrase{}.say(Letters{Face: Bold, Height: 7}, d.Plan.Title).set(s.frame.W)
	for i := range d.Setups {
		u := &d.Setups[i]
		p := phrase{}.say(Letters{Face: Bold, Height: 3.5}, fmt.Sprintf("%d.", u.Number)).
			say(body, u.Bit.Name+", fence to near edge")
		p = s.length(p, body, u.Fence.NearEdge).say(body, "; heights")
		p = s.lengths(p, body, u.Heights)
		b.below(p.set(s.frame.W), 2)
	}
	return b
}
