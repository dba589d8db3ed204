package joint

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Halving is two pieces that lie in one plane, each let into the other: at a
// corner, as a tee, or crossing.
var Halving = Kind{
	Name:    "halving",
	Says:    "two pieces cross or meet, each cut half away",
	Also:    []string{"half-lap", "half lap", "halved joint", "cross halving", "half lap joint"},
	Half:    "lap",
	Takes:   []string{"depth"},
	Example: "lap: rail / left, into: stile / front, place: {top: flush}",
	Flat:    true,
	spans:   across,
	make:    makeHalving,
}

func makeHalving(w *work) {
	d := w.Side.Dimension()
	thick, stock := w.Part.Size[d], w.Into.Size[d]
	depth := w.Depth
	if depth == 0 {
		depth = thick / 2
	}
	switch {
	case depth >= stock:
		w.fault("make it shallower than the stock", []string{"depth", "into"}, "a lap %s deep goes right through %q, which is %s thick there", w.text(depth), w.Into.Name, w.text(stock))
		return
	case depth >= thick:
		w.fault(fmt.Sprintf("keep it under %s", w.text(thick)), []string{"depth"}, "a lap %s deep takes all of %q in, which is %s thick", w.text(depth), w.Part.Name, w.text(thick))
		return
	}
	var into, part [3]stretch
	for _, d := range across(w.Meeting) {
		lies := w.stretch(d, 0, 0)
		into[d] = stretch{max(0, lies.lo), min(w.Into.Size[d], lies.hi)}
		part[d] = stretch{into[d].lo - w.lies[d].at, into[d].hi - w.lies[d].at}
		if into[d].long() <= 0 {
			w.fault("move it until the two cross", []string{"place " + d.Low().String(), "place " + d.High().String(), "place"},
				"%q lies beside %q %s and does not cross it", w.Part.Name, w.Into.Name, d)
			return
		}
	}
	receiving, ok := w.letIn(w.Into, w.Side, depth, into, true)
	entering, ok2 := w.letIn(w.Part, w.Side.Opposite(), thick-depth, part, false)
	if !ok || !ok2 {
		return
	}
	w.into(receiving)
	w.part(entering)
	w.halves.Mates = receiving.Kind.Laps && entering.Kind.Laps
	if w.End != joinery.NoSide {
		// From the nearer side of the other piece to the end.
		d := w.End.Dimension()
		lies := w.stretch(d, 0, 0)
		w.halves.Enters = w.Into.Size[d] - lies.lo
		if w.End.High() {
			w.halves.Enters = lies.hi
		}
	}
}

// letIn is the cut that takes a rectangle out of a face of a piece: a lap at an
// end, a channel between two walls away from it, a rabbet where it is open at an
// end but stopped across it.
func (w *work) letIn(p *joinery.Piece, face joinery.Side, depth measure.Length, area [3]stretch, receiving bool) (joinery.Cut, bool) {
	cut := joinery.Cut{In: face, Depth: depth}
	length := p.Grain
	if length == face.Dimension() {
		length = longer(p, face)
	}
	other := face.Dimension().Third(length)
	whole := func(d joinery.Dimension) bool { return area[d].lo == 0 && area[d].hi == p.Size[d] }
	if whole(length) {
		length, other = other, length // the piece lies along the other way
	}
	if whole(length) {
		w.fault("make one of them wider or longer", []string{"place"}, "all of %q would be cut away", p.Name)
		return cut, false
	}
	at := joinery.NoSide
	switch {
	case area[length].lo == 0:
		at = length.Low()
	case area[length].hi == p.Size[length]:
		at = length.High()
	}
	switch {
	case at != joinery.NoSide && whole(other):
		cut.Kind, cut.At, cut.Length = &joinery.Lap, at, area[length].long()
		return cut, true
	case at != joinery.NoSide:
		cut.Kind, cut.Along, cut.Width = &joinery.Rabbet, at, area[length].long()
	default:
		cut.Kind, cut.Width = trench(p, other), area[length].long()
		from := joinery.NoSide
		if receiving {
			from = w.lies[length].from
		}
		if from == joinery.NoSide {
			from, cut.Fence.Either = length.Low(), true
		}
		cut.Start = joinery.Setback{Distance: area[length].lo, From: from}
		if from.High() {
			cut.Start.Distance = p.Size[length] - area[length].hi
		}
	}
	if !whole(other) {
		cut.Span = joinery.Span{From: area[other].lo, To: area[other].hi, Side: other.Low()}
	}
	return cut, true
}

// longer is the longer of the two dimensions of a face.
func longer(p *joinery.Piece, face joinery.Side) joinery.Dimension {
	var best joinery.Dimension
	size := measure.Length(-1)
	for _, d := range joinery.Dimensions {
		if d != face.Dimension() && p.Size[d] > size {
			best, size = d, p.Size[d]
		}
	}
	return best
}
