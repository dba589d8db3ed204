package wording

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Way is how a mark is set: what is put there, for what of the work, and the
// edge of the bit it is measured from.
type Way struct {
	Set  string // "MARK, LEFT", "BACK STOP, RIGHT"
	For  string // "for the LEADING end"
	From string // "from TRAILING (left) edge"

	guide  deck.Guide
	stop   bool
	blocks bool
	edge   string // the edge of the bit
}

// WayOf says how a run's start or stop is set by a guide. A stopped start is
// never made without a back stop, in no shop; between stop blocks the work runs
// against a front stop as well.
func WayOf(r *deck.Run, stop bool, guide deck.Guide, blocks bool) Way {
	w := Way{guide: guide, stop: stop, blocks: blocks, edge: "TRAILING (left) edge"}
	switch shaped := r.Channel.Section.Shaped(); {
	case shaped && stop: // its widest part is behind the fence
		w.edge = "the bit's RIGHT edge at the fence"
	case shaped:
		w.edge = "the bit's LEFT edge at the fence"
	case stop:
		w.edge = "LEADING (right) edge"
	}
	w.From = "from " + w.edge
	if blocks {
		w.guide = deck.ByTail
		if stop {
			w.guide = deck.ByLead
		}
	}
	switch {
	case w.guide == deck.ByTail && !stop:
		w.Set, w.For = "BACK STOP, RIGHT", "for the TAIL end"
	case w.guide == deck.ByTail:
		w.Set, w.For = "MARK, RIGHT", "for the TAIL end"
	case w.guide == deck.ByLead && blocks:
		w.Set, w.For = "FRONT STOP, LEFT", "for the LEADING end"
	case w.guide == deck.ByLead:
		w.Set, w.For = "MARK, LEFT", "for the LEADING end"
	default:
		w.Set, w.For = "PENCIL LINE", "this far from the LEADING end"
		w.From = "held at " + w.edge
	}
	return w
}

// Length is the one number to set.
func (w Way) Length(m *deck.Mark) measure.Length {
	switch w.guide {
	case deck.ByLead:
		return m.LeadPastEdge
	case deck.ByTail:
		return m.TailBeforeEdge
	}
	return m.Line
}

// BroughtUp reports whether the back stop of a pair is brought up to the work;
// where stop blocks are set it stands by its number.
func BroughtUp(p *deck.Pair, blocks bool) bool {
	return !blocks && p.Start != nil && p.Start.Guide == deck.ByLead
}

// BringingUp tells how back stops are set that are brought up to the work, "" where none
// is. Where several pairs are gone through at every height, the bit stands above the
// table by then, so their places are marked first.
func BringingUp(u *deck.Setup, blocks bool) string {
	drops, brought := 0, false
	for i := range u.Marks {
		if p := &u.Marks[i]; p.Start != nil {
			drops++
			brought = brought || BroughtUp(p, blocks)
		}
	}
	switch {
	case !brought:
		return ""
	case drops > 1 && len(u.Heights) > 1:
		return "BACK STOP: before height 1, bit below the table, mark the tail at each START; clamp there, pair by pair."
	}
	return "BACK STOP: bring it up to the tail of work held at START, bit below the table."
}

// Behind is how the back stop of a drop is set whose start is set by a mark; it is
// not asked for where the start is that stop.
func (w Way) Behind() (behind Way, asked bool) {
	if w.stop || w.guide == deck.ByTail {
		return Way{}, false
	}
	return Way{Set: "RIGHT", For: "for the TAIL end", From: "from " + w.edge, guide: deck.ByTail, edge: w.edge}, true
}

// OffFence says that the stop of a pair stands beyond the fence, "" where it does not.
func (w Way) OffFence(fence joinery.FenceReach, r *deck.Run) string {
	if w.stop && !w.blocks || !r.StopOffFence(w.stop, fence) {
		return ""
	}
	return map[bool]string{false: "The BACK STOP", true: "The FRONT STOP"}[w.stop] + " stands " + offFence + "."
}

const offFence = "BEYOND THE FENCE"

// StopLine tells where the back stop of a drop stands that is set by a mark, and
// warns of a stop beyond the fence. It is "" where there is nothing to tell.
func (w Way) StopLine(m *deck.PairMark, text func(measure.Length) string, fence joinery.FenceReach, r *deck.Run) string {
	off := w.OffFence(fence, r)
	if _, asked := w.Behind(); !asked {
		return off
	}
	edge := "the TRAILING edge"
	if r.Channel.Section.Shaped() {
		edge = w.edge
	}
	what := w.BackStopAt(m, text) + " of " + edge + ", for the TAIL"
	if off != "" {
		what += ", " + offFence
	}
	return what + "."
}

// FromEdges says once from where all marks of a card are measured, and to what.
const FromEdges = "START from the TRAILING edge, STOP from the LEADING; left: to the leading end, right: the tail."

// BackStopAt is where the back stop of a drop stands that is set by a mark, "" for
// any other way.
func (w Way) BackStopAt(m *deck.PairMark, text func(measure.Length) string) string {
	if w.stop || w.guide == deck.ByTail {
		return ""
	}
	return "BACK STOP " + side(m.TailBeforeEdge, text, "RIGHT", "LEFT")
}

// Others are the other ways to measure the same mark from that edge, which
// hold for all runs of its pair.
func (w Way) Others(m *deck.PairMark, text func(measure.Length) string) string {
	var all []string
	if w.guide != deck.ByLine && m.Lead {
		all = append(all, "line "+text(m.Line))
	}
	if w.guide != deck.ByLead && m.Lead {
		all = append(all, "lead "+side(m.LeadPastEdge, text, "left", "right"))
	}
	if w.guide != deck.ByTail && m.Tail && (w.stop || w.guide == deck.ByTail) {
		all = append(all, "tail "+side(m.TailBeforeEdge, text, "right", "left"))
	}
	if len(all) == 0 {
		return ""
	}
	return "or " + strings.Join(all, ", ")
}

// OthersInWords are the other ways where room allows to say them so that they are
// read without help.
func (w Way) OthersInWords(m *deck.PairMark, text func(measure.Length) string) string {
	short := w.Others(m, text)
	if w.guide != deck.ByLine && m.Lead {
		short = strings.Replace(short, "or line "+text(m.Line), "or pencil a line "+text(m.Line)+" from the leading end", 1)
	}
	return strings.Replace(short, "lead ", "leading end ", 1)
}

// side is a length and the side of the bit it is on; a negative one is on the
// other.
func side(l measure.Length, text func(measure.Length) string, on, other string) string {
	if l < 0 {
		return text(-l) + " " + other
	}
	return text(l) + " " + on
}
