package remark

import (
	"fmt"

	"fencecard/joinery/measure"
)

// findHairMove looks for fence distances of one channel that lie closer
// together than the shop's scale shows: the bit is a hair narrower than the
// channel, as measured bits are.
func findHairMove(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		for i := 1; i < len(m.runs); i++ {
			a, b := m.runs[i-1].Step, m.runs[i].Step
			move := b.NearEdge - a.NearEdge
			if a.Turned || move >= w.scale.Division {
				continue
			}
			found = append(found, finding{m.cut, fmt.Sprintf(
				"the %s is %s wider than the %s bit, and no rule shows that move of the fence: %s%s, or put a shim of %s between fence and work for the first run and take it out for the last",
				m.words(), w.scale.Spell(move), b.Bit.Name, m.asWide(w.scale.Spell(b.Bit.True())), m.fitted(), w.scale.Spell(move)), []string{m.widthKey()}})
			break
		}
	}
	return found
}

// fitted says what is looked at where a channel becomes as wide as its bit.
func (m *made) fitted() string {
	if m.cut.Slot != nil {
		return " where the screw still moves in that"
	}
	return " and fit its mate to it"
}

// findHairHeight looks for a full depth that is more than another at its setup by less
// than the shop's scale shows: two depths of the plan that nobody can set apart.
func findHairHeight(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		if len(m.runs) == 0 || m.channel.Section.Shaped() {
			continue
		}
		setup, depth := m.runs[0].Setup, m.channel.Depth
		below := measure.Length(0)
		for _, h := range w.depths[setup] {
			if h < depth && depth-h < w.scale.Division {
				below = max(below, h)
			}
		}
		if below == 0 {
			continue
		}
		found = append(found, finding{m.cut, fmt.Sprintf(
			"the %s is %s deep, %s more than another cut at setup %d, and no rule shows that move of the bit: make both %s deep where the fit allows, or raise the bit a hair and measure its depth in scrap",
			m.words(), w.scale.Spell(depth), w.scale.Spell(depth-below), setup, w.scale.Spell(below)), []string{"depth", "cheeks"}})
	}
	return found
}

// asWide says what to write so that the channel is so wide: the key, or the word of the
// joint that it comes from.
func (m *made) asWide(wide string) string {
	word, ok := m.cut.Places.Word(m.widthKey())
	if !ok {
		return "make it " + wide + " wide"
	}
	return "write " + word + ": " + wide
}

// widthKey is the key of the plan that says how wide the channel is.
func (m *made) widthKey() string {
	switch {
	case m.cut.Length > 0:
		return "length"
	case m.goesOn():
		return "screw"
	case m.cut.Slot != nil:
		return "head"
	}
	return "width"
}
