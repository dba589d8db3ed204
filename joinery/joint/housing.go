package joint

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Housing is a board whose whole end or edge stands in a dado or a groove.
var Housing = Kind{
	Name:    "housing",
	Says:    "a whole end or edge of a board goes into a channel across another",
	Also:    []string{"dado", "dado joint", "housed joint"},
	Half:    "board",
	Needs:   []string{"depth"},
	Takes:   []string{"stopped", "tongue"},
	Example: "board: shelf / left, right, into: left side / right, right side / left, place: {bottom: 4 up, front: flush}, depth: 1/4, stopped: 3/8 from front",
	Passes:  true,
	spans:   across,
	make:    makeHousing,
}

func makeHousing(w *work) {
	wide, run, ok := w.flat()
	if !ok || !w.deep("depth", w.Depth) {
		return
	}
	slot, tongue, ok := w.bare(wide)
	if !ok || !w.within(wide, slot, "dado") {
		return
	}
	lies := w.stretch(run, 0, 0)
	if lies.hi <= 0 || lies.lo >= w.Into.Size[run] {
		w.fault("move it until the two meet", []string{"place " + run.Low().String(), "place " + run.High().String(), "place"},
			"%q lies beside %q and does not go in", w.Part.Name, w.Into.Name)
		return
	}
	runs := lies
	var notches []joinery.Cut
	for _, stop := range w.Stopped {
		notch, ok := w.stop(stop, run, lies, &runs)
		if !ok {
			return
		}
		if notch > 0 {
			notches = append(notches, joinery.Cut{Kind: &joinery.Rabbet, Name: "notch", In: stop.From, Along: w.End,
				Width: w.Depth, Depth: notch, By: "saw"})
		}
	}
	if runs.hi <= runs.lo {
		w.fault("stop it nearer to the side", []string{"stopped"}, "nothing is left of the dado between its ends")
		return
	}
	dado := joinery.Cut{Kind: trench(w.Into, run), In: w.Side, Depth: w.Depth, Square: w.Square}
	w.setback(&dado, wide, slot)
	from := w.lies[run].from
	if len(w.Stopped) > 0 {
		from = w.Stopped[0].From.Opposite()
	}
	w.span(&dado, run, runs, from)
	w.into(dado)
	if tongue != nil {
		tongue.Along, tongue.Width = w.End, w.Depth
		w.part(*tongue)
	}
	w.halves.Mates, w.halves.Enters = true, w.Depth
	w.halves.Part = append(w.halves.Part, notches...)
}

// flat returns the dimension a board is thick in and the other one across the
// joint, in which its dado runs.
func (w *work) flat() (wide, run joinery.Dimension, ok bool) {
	two := across(w.Meeting)
	wide, run = two[0], two[1]
	size := w.Part.Size
	switch {
	case size[wide] > size[run]:
		wide, run = run, wide
	case size[wide] == size[run] && w.Into.Grain == run:
		wide, run = run, wide // a dado runs across the grain
	}
	return wide, run, true
}

// deep faults a depth that leaves nothing of the receiving piece.
func (w *work) deep(word string, depth measure.Length) bool {
	thick := w.Into.Size.Between(w.Side)
	if depth < thick {
		return true
	}
	w.fault("a third of the stock is usual: "+w.text(w.scale.Round(thick/3)), []string{word},
		"%s deep from the %s goes right through %q, which is %s thick there", w.text(depth), w.Side, w.Into.Name, w.text(thick))
	return false
}

// bare is the channel for a board that goes in with its whole thickness, or with
// a tongue; then the rest is a rabbet from the other side.
func (w *work) bare(wide joinery.Dimension) (stretch, *joinery.Cut, bool) {
	thick, flush := w.Part.Size[wide], w.Tongue.From
	if raised := w.Raised.Leaves; raised.From != joinery.NoSide && raised.From.Dimension() == wide {
		if flush != joinery.NoSide {
			w.fault("take tongue out", []string{"tongue"}, "%q is raised, and its edges are the tongues already", w.Part.Name)
			return stretch{}, nil, false
		}
		rest := thick - raised.Distance
		if raised.From.High() {
			return w.stretch(wide, rest, 0), nil, true
		}
		return w.stretch(wide, 0, rest), nil, true
	}
	switch {
	case flush == joinery.NoSide:
		return w.stretch(wide, 0, 0), nil, true
	case flush.Dimension() != wide:
		w.fault(fmt.Sprintf("write from %s or from %s", wide.Low(), wide.High()), []string{"tongue"},
			"%q is %s thick %s, so no tongue is flush with its %s", w.Part.Name, w.text(thick), wide, flush)
		return stretch{}, nil, false
	case w.Tongue.Distance >= thick:
		w.fault("make it thinner, or take tongue out: then the whole thickness goes in", []string{"tongue"},
			"a tongue of %s is all of %q, which is %s thick", w.text(w.Tongue.Distance), w.Part.Name, w.text(thick))
		return stretch{}, nil, false
	}
	rest := thick - w.Tongue.Distance
	slot := w.stretch(wide, 0, rest)
	if flush.High() {
		slot = w.stretch(wide, rest, 0)
	}
	return slot, &joinery.Cut{Kind: &joinery.Rabbet, In: flush.Opposite(), Depth: rest}, true
}

// stop ends the dado at a distance from a side, and returns how much of the
// board has to be notched there.
func (w *work) stop(stop Line, run joinery.Dimension, lies stretch, runs *stretch) (notch measure.Length, ok bool) {
	size := w.Into.Size[run]
	switch {
	case stop.From.Dimension() != run:
		w.fault(fmt.Sprintf("write from %s or from %s", run.Low(), run.High()), []string{"stopped"}, "the dado runs %s, so it has no end at the %s", run, stop.From)
		return 0, false
	case stop.From.High():
		runs.hi = size - stop.Distance
		notch = lies.hi - runs.hi
	default:
		runs.lo = stop.Distance
		notch = runs.lo - lies.lo
	}
	if stop.Distance == 0 {
		notch = 0 // it runs out there, whether the board reaches so far or not
	}
	return max(0, notch), true
}
