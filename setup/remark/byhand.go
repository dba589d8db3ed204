package remark

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/solid"
)

// byHand is a channel that no card makes; its corners are square.
func byHand(c *joinery.Cut, ch joinery.Channel, size joinery.Size) *made {
	hollow := solid.Of(ch, size, 0)
	return &made{cut: c, channel: ch, hollow: hollow, box: hollow.Box(size), runs: []solid.Hollow{hollow}}
}

// atTable lists the channels that have cards.
func (w *work) atTable() []*made {
	var all []*made
	for _, m := range w.cuts {
		if len(m.cards) > 0 {
			all = append(all, m)
		}
	}
	return all
}

// findByHand says what the deck leaves to the saw and the chisel.
func findByHand(w *work) []finding {
	var found []finding
	var last *joinery.Cut
	for _, m := range w.cuts {
		if m.cut.By == "" || m.cut == last {
			continue
		}
		last = m.cut
		text := fmt.Sprintf("the %s %q is not cut at the table: by %s", last.Kind, last.Name, last.By)
		if guide := w.beyond(m.channel); guide != "" {
			text += "; the fence does not reach it, so for a hand-held router " + guide
		}
		found = append(found, finding{last, text, []string{"by"}})
	}
	return found
}
