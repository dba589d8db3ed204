package wording

import (
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Marking is how a mark is set: what is put there, for what of the work, and the
// edge of the bit it is measured from.
type Marking struct {
	Set  string // "MARK, LEFT", "BACK STOP, RIGHT"
	For  string // "for the LEADING end"
	From string // "from TRAILING (left) edge"

	guide  deck.Guide
	stop   bool
	blocks bool
	edge   string // the edge of the bit
}

// MarkingOf says how a run's start or stop is set by a guide. A stopped start is
// never made without a back stop, in no shop; between stop blocks the work runs
// against a front stop as well.
func MarkingOf(r *deck.Run, stop bool, guide deck.Guide, blocks bool) Marking {
	mk := Marking{guide: guide, stop: stop, blocks: blocks, edge: "TRAILING (left) edge"}
	switch shaped := r.Channel.Section.Shaped(); {
	case shaped && stop: // its widest part is behind the fence
		mk.edge = "the bit's RIGHT edge at the fence"
	case shaped:
		mk.edge = "the bit's LEFT edge at the fence"
	case stop:
		mk.edge = "LEADING (right) edge"
	}
	mk.From = "from " + mk.edge
	if blocks {
		mk.guide = deck.ByTail
		if stop {
			mk.guide = deck.ByLead
		}
	}
	switch {
	case mk.guide == deck.ByTail && !stop:
		mk.Set, mk.For = "BACK STOP, RIGHT", "for the TAIL end"
	case mk.guide == deck.ByTail:
		mk.Set, mk.For = "MARK, RIGHT", "for the TAIL end"
	case mk.guide == deck.ByLead && blocks:
		mk.Set, mk.For = "FRONT STOP, LEFT", "for the LEADING end"
	case mk.guide == deck.ByLead:
		mk.Set, mk.For = "MARK, LEFT", "for the LEADING end"
	default:
		mk.Set, mk.For = "PENCIL LINE", "this far from the LEADING end"
		mk.From = "held at " + mk.edge
	}
	return mk
}

// Clamped reports whether what is set is a stop, not a mark or a line.
func (mk Marking) Clamped() bool { return mk.blocks || mk.guide == deck.ByTail && !mk.stop }

// NoMarks is what stands over runs without marks.
func NoMarks(u *deck.Setup) string {
	return "NO MARKS: " + Unmarked(u, false) + ", run out left."
}

// Unmarked is what is done where a run has no start mark, or no stop mark; a back stop
// that is set for others of its setup would stand in the way of what is fed in.
func Unmarked(u *deck.Setup, stop bool) string {
	switch {
	case stop:
		return "run out to the left"
	case slices.ContainsFunc(u.Marks, func(p deck.Pair) bool { return p.Start != nil }):
		return "back stop off; feed in from the right"
	}
	return "feed in from the right"
}

// Length is the one number to set.
func (mk Marking) Length(m *deck.Mark) measure.Length {
	switch mk.guide {
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
func (mk Marking) Behind() (behind Marking, asked bool) {
	if mk.stop || mk.guide == deck.ByTail {
		return Marking{}, false
	}
	return Marking{Set: "RIGHT", For: "for the TAIL end", From: "from " + mk.edge, guide: deck.ByTail, edge: mk.edge}, true
}

// OffFence says that the stop of a pair stands beyond the fence, "" where it does not.
func (mk Marking) OffFence(fence joinery.FenceReach, r *deck.Run) string {
	if mk.stop && !mk.blocks || !r.StopOffFence(mk.stop, fence) {
		return ""
	}
	return map[bool]string{false: "The BACK STOP", true: "The FRONT STOP"}[mk.stop] + " stands " + offFence + "."
}

const offFence = "BEYOND THE FENCE"

// StopLine tells where the back stop of a drop stands that is set by a mark, and
// warns of a stop beyond the fence. It is "" where there is nothing to tell.
func (mk Marking) StopLine(m *deck.PairMark, text func(measure.Length) string, fence joinery.FenceReach, r *deck.Run) string {
	off := mk.OffFence(fence, r)
	if _, asked := mk.Behind(); !asked {
		return off
	}
	edge := "the TRAILING edge"
	if r.Channel.Section.Shaped() {
		edge = mk.edge
	}
	what := mk.BackStopAt(m, text) + " of " + edge + ", for the TAIL"
	if off != "" {
		what += ", " + offFence
	}
	return what + "."
}

// FromEdges says once from where all marks of a card are measured, and to what.
const FromEdges = "START from the TRAILING edge, STOP from the LEADING; left: to the leading end, right: the tail."

// BackStopAt is where the back stop of a drop stands that is set by a mark, "" for
// any other marking.
func (mk Marking) BackStopAt(m *deck.PairMark, text func(measure.Length) string) string {
	if mk.stop || mk.guide == deck.ByTail {
		return ""
	}
	return "BACK STOP " + side(m.TailBeforeEdge, text, "RIGHT", "LEFT")
}

// Others are the other ways to measure the same mark from that edge, which
// hold for all runs of its pair.
func (mk Marking) Others(m *deck.PairMark, text func(measure.Length) string) string {
	var all []string
	if mk.guide != deck.ByLine && m.Lead {
		all = append(all, "line "+text(m.Line))
	}
	if mk.guide != deck.ByLead && m.Lead {
		all = append(all, "lead "+side(m.LeadPastEdge, text, "left", "right"))
	}
	if mk.guide != deck.ByTail && m.Tail && (mk.stop || mk.guide == deck.ByTail) {
		all = append(all, "tail "+side(m.TailBeforeEdge, text, "right", "left"))
	}
	if len(all) == 0 {
		return ""
	}
	return "or " + strings.Join(all, ", ")
}

// OthersInWords are the other ways where room allows to say them so that they are
// read without help.
func (mk Marking) OthersInWords(m *deck.PairMark, text func(measure.Length) string) string {
	short := mk.Others(m, text)
	if mk.guide != deck.ByLine && m.Lead {
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
