package joint

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// MortiseAndTenon is a tongue at the end of a piece in a slot that runs with the
// grain of the other.
var MortiseAndTenon = Kind{
	Name:    "mortise and tenon",
	Says:    "an end becomes a tongue, and goes into a hole in a side",
	Also:    []string{"mortice and tenon", "mortise-and-tenon", "tenon and mortise"},
	Half:    "tenon",
	Needs:   []string{"thickness"},
	Takes:   []string{"shoulders", "length", "through", "deeper", "haunch", "play", "room", "glue"},
	Example: "tenon: rail / left, into: leg / right, place: {top: flush, front: 1/8 back}, thickness: 3/8, shoulders: {top: 1/2}, length: 3/4, deeper: 1/16",
	spans:   across,
	make:    makeMortise,
}

func makeMortise(w *work) {
	run := w.Into.Grain
	if run == w.Side.Dimension() {
		w.fault("name another side of it, or write the two cuts under cuts", []string{"into"},
			"the %s of %q is end grain, and a mortise runs with the grain", w.Side, w.Into.Name)
		return
	}
	wide := run.Third(w.Side.Dimension())
	cheek := w.shoulders(wide, run)
	depth, long := w.depth()
	if len(w.faults) > 0 {
		return
	}
	slot := w.stretch(wide, cheek[wide.Low()], cheek[wide.High()])
	tongue := w.stretch(run, cheek[run.Low()], cheek[run.High()])
	if !w.within(wide, slot, "mortise") || !w.within(run, tongue, "mortise") {
		return
	}
	hole, ok := w.lengthened(run, tongue)
	if !ok {
		return
	}
	mortise := joinery.Cut{Kind: &joinery.Mortise, In: w.Side, Depth: depth, Square: w.Square}
	w.setback(&mortise, wide, slot)
	from := w.Glue
	if from == joinery.NoSide {
		from = w.lies[run].from
	}
	w.span(&mortise, run, hole, from)
	w.into(mortise)
	w.halves.Mates, w.halves.Enters = true, long
	for _, side := range []joinery.Side{wide.Low(), wide.High()} {
		if cheek[side] > 0 || cheek[side.Opposite()] == 0 {
			cheek[side] += w.cut(cheek, side)
		}
	}
	w.tenon(long, cheek)
	w.haunch(mortise, wide, run, cheek)
}

// cut is the share of the play that comes off a cheek. A bare face keeps its
// wood, so that the other cheek gives it all.
func (w *work) cut(cheek map[joinery.Side]measure.Length, side joinery.Side) measure.Length {
	if cheek[side] > 0 && cheek[side.Opposite()] == 0 {
		return w.Play
	}
	return w.Play / 2
}

// shoulders works out what stands back from the tenon on its four sides.
func (w *work) shoulders(wide, run joinery.Dimension) map[joinery.Side]measure.Length {
	cheek := map[joinery.Side]measure.Length{}
	for _, s := range w.Shoulders {
		if s.Side.Dimension() == w.Side.Dimension() {
			w.fault("take it out", []string{"shoulders " + s.Side.String(), "shoulders"},
				"the tenon points to the %s, so there is no shoulder at the %s", w.End, s.Side)
			continue
		}
		cheek[s.Side] = s.Depth
	}
	stock := w.Part.Size[wide]
	low, high := wide.Low(), wide.High()
	_, lowSaid := cheek[low]
	_, highSaid := cheek[high]
	spare := stock - w.Thickness
	switch {
	case spare < 0:
		w.fault("write "+w.text(stock)+" at the most", []string{"thickness"},
			"a tenon %s thick cannot be cut on %q, which is %s %s", w.text(w.Thickness), w.Part.Name, w.text(stock), wide)
	case cheek[low]+cheek[high] > spare:
		w.fault(w.otherCheeks(wide, run, "make the tenon thinner, or the shoulders shallower"), []string{"shoulders " + low.String(), "shoulders " + high.String(), "thickness"},
			"the shoulders and the tenon come to %s, but %q measures %s %s", w.text(cheek[low]+cheek[high]+w.Thickness), w.Part.Name, w.text(stock), wide)
	case lowSaid && highSaid && cheek[low]+cheek[high] < spare:
		w.fault(w.otherCheeks(wide, run, fmt.Sprintf("take one of the two shoulders out, or write thickness: %s", w.scale.Format(stock-cheek[low]-cheek[high]))),
			[]string{"shoulders " + high.String(), "thickness"},
			"%s between shoulders of %s and %s leaves a tenon of %s, not %s", w.text(stock), w.text(cheek[low]), w.text(cheek[high]),
			w.text(stock-cheek[low]-cheek[high]), w.text(w.Thickness))
	case lowSaid:
		cheek[high] = spare - cheek[low]
	case highSaid:
		cheek[low] = spare - cheek[high]
	default:
		cheek[low], cheek[high] = spare/2, spare-spare/2
	}
	if off := cheek[run.Low()] + cheek[run.High()]; off >= w.Part.Size[run] {
		w.fault("make the shoulders shallower", []string{"shoulders " + run.High().String(), "shoulders " + run.Low().String()},
			"the shoulders take %s, and %q measures %s %s: no tenon is left", w.text(off), w.Part.Name, w.text(w.Part.Size[run]), run)
	}
	if w.Play >= w.Thickness && w.Play > 0 {
		w.fault("write a few thousandths of an inch, such as play: 0.006", []string{"play"}, "a play of %s leaves nothing of the tenon", w.text(w.Play))
	}
	return cheek
}

// otherCheeks is a remedy where the shoulders and the thickness do not agree. Where
// the tenon is measured across the wide way of its piece and no shoulder is named
// the other way, the maker likely took the thickness to lie that way.
func (w *work) otherCheeks(wide, run joinery.Dimension, remedy string) string {
	for _, s := range w.Shoulders {
		if s.Side.Dimension() == run {
			return remedy
		}
	}
	if w.Part.Size[wide] <= w.Part.Size[run] {
		return remedy
	}
	return fmt.Sprintf("the mortise runs %s, with the grain of %q, so thickness is measured %s: name shoulders at the %s and %s instead, or %s",
		run, w.Into.Name, wide, run.Low(), run.High(), remedy)
}

// depth returns how deep the mortise is and how long the tenon.
func (w *work) depth() (depth, long measure.Length) {
	thick := w.Into.Size.Between(w.Side)
	switch {
	case w.Through && w.Length > 0:
		w.fault("keep one of the two", []string{"through"}, "a tenon that goes right through is as long as %q is thick, and a length is given too", w.Into.Name)
	case w.Through && w.Deeper > 0:
		w.fault("take deeper out", []string{"deeper"}, "a mortise that goes right through has no bottom to be deeper than the tenon")
	case w.Through:
		return thick, thick
	case w.Length == 0:
		w.fault("add length: 3/4, with your own figure, or through: yes", []string{w.kind.Half}, "the joint does not say how long the tenon is")
	case w.Length+w.Deeper >= thick:
		w.fault(fmt.Sprintf("keep it under %s, or write through: yes and no length", w.text(thick-w.Deeper)), []string{"length"},
			"a mortise %s deep would go right through %q, which is %s thick there", w.text(w.Length+w.Deeper), w.Into.Name, w.text(thick))
	case w.Length >= w.Part.Size.Between(w.End):
		w.fault("make it shorter", []string{"length"}, "a tenon %s long is all of %q", w.text(w.Length), w.Part.Name)
	}
	return w.Length + w.Deeper, w.Length
}

// lengthened is the mortise along the grain: as the tenon, and the room.
func (w *work) lengthened(run joinery.Dimension, tongue stretch) (stretch, bool) {
	hole := tongue
	if w.Glue != joinery.NoSide && w.Glue.Dimension() != run {
		w.fault(fmt.Sprintf("write glue: %s or glue: %s", run.Low(), run.High()), []string{"glue"},
			"the mortise runs %s, so the tenon has no edge at the %s to glue", run, w.Glue)
		return hole, false
	}
	room := w.Room
	if w.Seasons {
		room = w.seasons(run, tongue.long())
	}
	part := func(half bool) measure.Length {
		length := room
		if half {
			length /= 2
		}
		if w.Seasons {
			return w.scale.Ceil(length)
		}
		return length
	}
	switch {
	case w.Glue == joinery.NoSide:
		hole.lo, hole.hi = hole.lo-part(true), hole.hi+part(true)
	case w.Glue.High():
		hole.lo -= part(false)
	default:
		hole.hi += part(false)
	}
	if hole.lo < 0 || hole.hi > w.Into.Size[run] {
		w.fault("give the tenon a deeper shoulder there, or glue the other edge", []string{"room"},
			"with its room the mortise would run out of %q", w.Into.Name)
		return hole, false
	}
	return hole, len(w.faults) == 0
}

// tenon adds the tongue; a piece whose whole end goes in has none.
func (w *work) tenon(long measure.Length, cheek map[joinery.Side]measure.Length) {
	tenon := joinery.Cut{Kind: &joinery.Tenon, At: w.End, Length: long}
	for _, side := range joinery.Sides {
		if cheek[side] > 0 && side != w.Haunch.From {
			tenon.Cheeks = append(tenon.Cheeks, joinery.Cheek{Side: side, Depth: cheek[side]})
		}
	}
	if w.Rounded {
		tenon.Note = joinery.RoundEdges
	}
	if len(tenon.Cheeks) > 0 {
		w.part(tenon)
	}
}

// haunch adds the edge of the tenon that is sawn by hand down to a stub, and the
// stub's socket.
func (w *work) haunch(mortise joinery.Cut, wide, run joinery.Dimension, cheek map[joinery.Side]measure.Length) {
	at := w.Haunch.From
	switch {
	case at == joinery.NoSide:
		return
	case at.Dimension() != run:
		w.fault(fmt.Sprintf("write at %s or at %s", run.Low(), run.High()), []string{"haunch"}, "the tenon has no edge at the %s to haunch", at)
		return
	case cheek[at] == 0:
		w.fault(fmt.Sprintf("add %s to shoulders: the haunch is as wide", at), []string{"haunch"}, "there is no shoulder at the %s for a haunch", at)
		return
	case w.Haunch.Distance >= w.halves.Enters:
		w.fault("make it shorter: a third of the tenon is usual", []string{"haunch"}, "a haunch of %s is as long as the tenon", w.text(w.Haunch.Distance))
		return
	}
	w.part(joinery.Cut{Kind: &joinery.Lap, Name: "haunch", In: at, At: w.End,
		Length: w.halves.Enters - w.Haunch.Distance, Depth: cheek[at], By: "saw"})
	edge := w.stretch(run, 0, 0)
	tongue := w.stretch(run, cheek[run.Low()], cheek[run.High()])
	if at.High() {
		edge.lo = tongue.hi
	} else {
		edge.hi = tongue.lo
	}
	socket := mortise
	socket.Kind, socket.Name, socket.By, socket.Square = &joinery.Groove, "haunch", "chisel", false
	socket.Depth = min(w.Haunch.Distance+w.Deeper, mortise.Depth)
	socket.Fence, socket.Span = joinery.Fencing{}, joinery.Span{}
	w.span(&socket, run, edge, at)
	w.into(socket)
}
