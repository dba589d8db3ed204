package joint

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Panel is a board whose edges stand in grooves round a frame, free to move.
var Panel = Kind{
	Name:    "panel",
	Says:    "the edges of a panel go into grooves round a frame",
	Also:    []string{"panel in a frame", "framed panel"},
	Half:    "edges",
	Needs:   []string{"depth"},
	Takes:   []string{"groove", "room", "tongue", "stopped"},
	Example: "edges: panel / left, right, top, bottom, into: left stile / right, right stile / left, top rail / bottom, bottom rail / top, place: {front: 1/4 back}, groove: 1/4, depth: 3/8, room: seasons, tongue: 1/4 from front",
	Shared:  true,
	Framed:  true,
	spans:   func(m Meeting) []joinery.Dimension { return []joinery.Dimension{m.thick()} },
	make:    makePanel,
	enters: func(w *work, opening measure.Length) measure.Length {
		return w.Depth - w.room(w.End.Dimension(), opening)/2
	},
}

// thick is the dimension across the joint in which the entering piece is
// thinnest.
func (m Meeting) thick() joinery.Dimension {
	two := across(m)
	if m.Part.Size[two[1]] < m.Part.Size[two[0]] {
		return two[1]
	}
	return two[0]
}

func makePanel(w *work) {
	wide := w.thick()
	run := wide.Third(w.Side.Dimension())
	if !w.deep("depth", w.Depth) {
		return
	}
	slot, tongue, ok := w.bare(wide)
	if !ok || !w.entersFlat() || !w.asGroove(wide, slot) || !w.within(wide, slot, "groove") {
		return
	}
	runs := stretch{w.Short, w.Into.Size[run] - w.Short}
	for _, stop := range w.Stopped {
		if _, ok := w.stop(stop, run, runs, &runs); !ok {
			return
		}
	}
	if runs.hi <= runs.lo {
		w.fault("stop it nearer to the ends", []string{"stopped"}, "nothing is left of the groove between its ends")
		return
	}
	groove := joinery.Cut{Kind: trench(w.Into, run), In: w.Side, Depth: w.Depth, Square: w.Square}
	w.setback(&groove, wide, slot)
	w.span(&groove, run, runs, joinery.NoSide)
	w.into(groove)
	if tongue != nil {
		tongue.Along, tongue.Width = w.End, w.Depth
		w.part(*tongue)
	}
	w.halves.Enters = w.Depth
}

// asGroove holds what goes in against the width of the groove.
func (w *work) asGroove(wide joinery.Dimension, slot stretch) bool {
	switch {
	case w.Groove == 0 || w.Groove == slot.long():
		return true
	case w.Raised.Leaves.From != joinery.NoSide:
		w.fault(fmt.Sprintf("write groove: %s, or take groove out; or leaves: %s in the panel", w.scale.Format(slot.long()), w.scale.Format(w.Groove)), []string{"groove"},
			"the groove is %s wide, and the raised edges of %q are left %s thick", w.text(w.Groove), w.Part.Name, w.text(slot.long()))
	case w.Tongue.From != joinery.NoSide:
		w.fault(fmt.Sprintf("write groove: %s, or take groove out", w.scale.Format(slot.long())), []string{"groove"},
			"the groove is %s wide and the tongue %s thick", w.text(w.Groove), w.text(slot.long()))
	case w.Groove < slot.long():
		w.fault(fmt.Sprintf("add tongue: %s from %s, the face that stays whole", w.scale.Format(w.Groove), wide.Low()), []string{"groove"},
			"%q is %s thick and does not go into a groove of %s", w.Part.Name, w.text(slot.long()), w.text(w.Groove))
	default:
		w.fault("write groove: "+w.scale.Format(slot.long())+", or take groove out", []string{"groove"},
			"%q is %s thick and would be loose in a groove of %s", w.Part.Name, w.text(slot.long()), w.text(w.Groove))
	}
	return false
}

// room is how much less than from bottom to bottom of its two grooves a panel
// measures along a dimension. The frame keeps its distance, its rails lying along
// their grain, so only the panel moves. The opening is from shoulder to shoulder.
func (w *work) room(along joinery.Dimension, opening measure.Length) measure.Length {
	switch {
	case along == w.Part.Grain:
		return 0
	case !w.Seasons:
		return w.Room
	}
	moves := func(room measure.Length) measure.Length { return w.swells(w.Part, along, opening+2*w.Depth-room) }
	room := w.scale.Ceil(moves(0))
	// A narrower panel moves less, so a division less may do.
	for less := room - w.scale.Division; less >= 0 && len(w.faults) == 0 && moves(less) <= less; less -= w.scale.Division {
		room = less
	}
	return room
}

// entersFlat checks that the flat of a raised edge goes as far into the groove as
// the panel does, which is its depth less half the room; what the seasons leave is
// not known here, and counts as room enough.
func (w *work) entersFlat() bool {
	deep := w.Depth - w.Room/2
	if w.Raised.Flat == 0 || w.Raised.Flat >= deep || w.Seasons && w.End.Dimension() != w.Part.Grain {
		return true
	}
	w.fault("make the groove "+w.scale.Format(w.Raised.Flat)+" deep, or raise the panel with a bit whose outline begins with a reach of "+w.scale.Format(deep), []string{"depth"},
		"%q goes %s into the groove, but its edge is thin only for %s", w.Part.Name, w.text(deep), w.text(w.Raised.Flat))
	return false
}
