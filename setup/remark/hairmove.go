package remark

import "fmt"

// findHairMove looks for fence distances of one channel that lie closer
// together than the shop's scale shows: the bit is a hair narrower than the
// channel, as measured bits are.
func findHairMove(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		for i := 1; i < len(m.cards); i++ {
			a, b := m.cards[i-1].Step, m.cards[i].Step
			move := b.NearEdge - a.NearEdge
			if a.Turned || move >= w.scale.Division {
				continue
			}
			found = append(found, finding{m.cut, fmt.Sprintf(
				"the %s is %s wider than the %s bit, and no rule shows that move of the fence: write %s: %s and fit its mate to the slot, or put a shim of %s between fence and work for the first run and take it out for the last",
				m.words(), w.scale.Spell(move), b.Bit.Name, m.widthKey(), w.scale.Spell(b.Bit.True()), w.scale.Spell(move)), []string{m.widthKey()}})
			break
		}
	}
	return found
}

// widthKey is the key of the plan that says how wide the channel is.
func (m *made) widthKey() string {
	if m.cut.Length > 0 {
		return "length"
	}
	return "width"
}
