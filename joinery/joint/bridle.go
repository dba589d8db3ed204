package joint

import (
	"fmt"

	"fencecard/joinery"
)

// Bridle is a tenon in a mortise that is open at the end of its piece, both right
// through.
var Bridle = Kind{
	Name:    "bridle",
	Says:    "an end goes as a tongue into a mortise that is open at the end of another",
	Also:    []string{"bridle joint", "open mortise and tenon"},
	Half:    "tenon",
	Takes:   []string{"thickness"},
	Example: "tenon: rail / left, into: stile / right, place: {top: flush, centred: front-back}, thickness: 1/4",
	spans:   across,
	make:    makeBridle,
}

func makeBridle(w *work) {
	run := w.Into.Grain
	if run == w.Side.Dimension() {
		w.fault("name another side of it", []string{"into"}, "the %s of %q is an end, and a bridle is entered from a side beside its end", w.Side, w.Into.Name)
		return
	}
	wide := run.Third(w.Side.Dimension())
	if w.Thickness == 0 {
		w.Thickness = w.scale.Round(w.Part.Size[wide] / 3)
	}
	cheek := w.shoulders(wide, run)
	if len(w.faults) > 0 {
		return
	}
	slot := w.stretch(wide, cheek[wide.Low()], cheek[wide.High()])
	lies := w.stretch(run, 0, 0)
	if !w.within(wide, slot, "mortise") {
		return
	}
	if lies.lo > 0 && lies.hi < w.Into.Size[run] {
		w.fault(fmt.Sprintf("write %s: flush or %s: flush in place, or make it a mortise and tenon with through: yes", run.High(), run.Low()),
			[]string{"place " + run.High().String(), "place " + run.Low().String(), "place"},
			"%q lies away from the ends of %q, and a bridle's mortise is open at one", w.Part.Name, w.Into.Name)
		return
	}
	if lies.lo <= 0 && lies.hi >= w.Into.Size[run] {
		w.fault("make one of them longer", []string{"place"}, "the mortise would run through all of %q from end to end", w.Into.Name)
		return
	}
	through := w.Into.Size.Between(w.Side)
	hole := joinery.Cut{Kind: &joinery.Mortise, In: w.Side, Depth: through, Square: w.Square}
	w.setback(&hole, wide, slot)
	open := run.Low()
	if lies.hi >= w.Into.Size[run] {
		open = run.High()
	}
	w.span(&hole, run, lies, open)
	w.into(hole)
	w.halves.Mates, w.halves.Enters = true, through
	w.tenon(through, cheek)
}
