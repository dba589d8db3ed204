package attable

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// A setup sheet sets a fence by three distances, and a mark by the one of
// several that falls on the usable fence. Here is which it says, and which
// others a maker could have measured.

// number is a length that the papers of a run say.
type number struct {
	as     string // how it is measured
	length measure.Length
}

// fenceSays are the distances to the near edge, the centre and the far edge.
func (b bench) fenceSays() []number {
	f := b.Setup.Kept.Fence(b.Setup.Fence)
	return []number{
		{"to the near edge of the bit", f.NearEdge},
		{"to the centre of the bit", f.Centre},
		{"to the far edge of the bit", f.FarEdge},
	}
}

func (b bench) mark(stop bool) *deck.Mark {
	if stop {
		return b.Claimed.Stop
	}
	return b.Claimed.Start
}

// guide is what of the work the sheet brings to the start or the stop. Between
// stop blocks that is the end that runs against the block.
func (b bench) guide(stop bool) deck.Guide {
	switch {
	case b.mark(stop) == nil:
		return deck.ByLine
	case b.Shop.Stops == joinery.Blocks && stop:
		return deck.ByLead
	case b.Shop.Stops == joinery.Blocks:
		return deck.ByTail
	}
	return b.Run.Reach(stop, b.Shop.Fence).Guide
}

// says is the number that a sheet prints for a mark set by a guide.
func says(guide deck.Guide, m *deck.Mark) measure.Length {
	switch guide {
	case deck.ByLead:
		return m.LeadPastEdge
	case deck.ByTail:
		return m.TailBeforeEdge
	}
	return m.Line
}

// as tells how that number is measured.
func (b bench) as(guide deck.Guide, stop bool) string {
	edge := "the bit's " + edgeOf(stop)
	switch guide {
	case deck.ByLead:
		return fmt.Sprintf("from %s to the %s end, which leads", edge, b.Claimed.Leads)
	case deck.ByTail:
		return fmt.Sprintf("from %s to the %s end, the tail", edge, b.Claimed.Leads.Opposite())
	}
	return fmt.Sprintf("from the %s end, which leads, to the pencil line", b.Claimed.Leads)
}

// markSays are the numbers of the marks, those of the one asked about first.
func (b bench) markSays(stop bool) []number {
	var all []number
	for _, stop := range []bool{stop, !stop} {
		m := b.mark(stop)
		if m == nil {
			continue
		}
		at := " at the start"
		if stop {
			at = " at the stop"
		}
		all = append(all,
			number{b.as(deck.ByLead, stop) + "," + at, m.LeadPastEdge},
			number{fmt.Sprintf("from the bit's centre to the %s end, which leads,%s", b.Claimed.Leads, at), m.LeadPastCentre},
			number{b.as(deck.ByTail, stop) + "," + at, m.TailBeforeEdge},
			number{fmt.Sprintf("from the bit's centre to the %s end, the tail,%s", b.Claimed.Leads.Opposite(), at), m.TailBeforeCentre},
		)
	}
	return all
}

// askSetup asks about a fence that stands as another setup has it: it may never have
// been moved.
func (b bench) askSetup(f Finding, which int) string {
	for i := range b.setups {
		s := &b.setups[i]
		set := s.Kept.Fence(s.Fence)
		if n := []measure.Length{set.NearEdge, set.Centre, set.FarEdge}[which]; s.Number != b.Setup.Number && b.right(f.Measured, n) {
			return fmt.Sprintf("%s is what setup %d says %s. Does the fence still stand as it did there?", b.text(n), s.Number, f.As)
		}
	}
	return ""
}

// askHeight asks about a bit that stands as high as another run has it: at this setup, or
// at another since which it may never have been moved.
func (b bench) askHeight(f Finding) string {
	for _, here := range []bool{true, false} {
		for i := range b.setups {
			s := &b.setups[i]
			if here != (s.Number == b.Setup.Number) {
				continue
			}
			for k := range s.Runs {
				r := &s.Runs[k]
				if len(r.Heights) == 0 {
					continue
				}
				high := s.Kept.Height(r.Heights[len(r.Heights)-1], s.Heights) + s.Carriage
				switch {
				case !b.right(f.Measured, high):
				case here:
					return fmt.Sprintf("%s is the full height of run %s. Was it set for that one?", b.text(high), r.Number)
				default:
					return fmt.Sprintf("%s is the full height of run %s, at setup %d. Does the bit still stand as it did there?", b.text(high), r.Number, s.Number)
				}
			}
		}
	}
	return ""
}

// full is the run's full height as the papers say it, without a carriage.
func (b bench) full() measure.Length { return b.Setup.Kept.Height(b.Channel.Depth, b.Setup.Heights) }

// askComputed asks about a fence set by the number that a test cut corrected.
func (b bench) askComputed(f Finding, computed measure.Length) string {
	if computed == f.Wants || !b.right(f.Measured, computed) {
		return ""
	}
	return fmt.Sprintf("%s was computed; after the test cut the fence stood at %s, which the sheet says large. Was it set by the other?", b.text(computed), b.text(f.Wants))
}

// ask asks about a wrong reading that is another number of the run.
func (b bench) ask(f Finding, numbers []number) string {
	for _, n := range numbers {
		if b.right(f.Measured, n.length) {
			return fmt.Sprintf("%s is what the sheet says %s. Did you measure that?", b.text(n.length), n.as)
		}
	}
	return ""
}
