package remark

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/solid"
)

// byHand is a channel that no run makes; its corners are square.
func byHand(c *joinery.Cut, ch joinery.Channel, size joinery.Size) *made {
	hollow := solid.Of(ch, size, 0)
	return &made{cut: c, channel: ch, hollow: hollow, box: hollow.Box(size), hollows: []solid.Hollow{hollow}}
}

// atTable lists the channels that have runs.
func (w *work) atTable() []*made {
	var all []*made
	for _, m := range w.cuts {
		if len(m.runs) > 0 {
			all = append(all, m)
		}
	}
	return all
}

// findByHand says how what the fence does not reach is cut with a hand-held
// router. What else is made by hand stands on the runs of its pieces.
func findByHand(w *work) []finding {
	var found []finding
	var last *joinery.Cut
	for _, m := range w.cuts {
		if m.cut.By == "" || m.cut == last {
			continue
		}
		last = m.cut
		if guide := w.beyond(m.channel); guide != "" {
			found = append(found, finding{last, fmt.Sprintf("the %s %q is made by %s, and the fence does not reach it, so for a hand-held router %s",
				last.Kind, last.Name, last.By, guide), []string{"by"}})
		}
	}
	return found
}
