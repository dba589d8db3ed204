package whatif

import (
	"cmp"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// edit is a change to every cut of one kind, name and measure.
type edit struct {
	text  string
	size  measure.Length          // how much is changed
	order int                     // how much trouble it is besides; that counts before the size
	like  func(*joinery.Cut) bool // which cuts it is made to
	make  func(*joinery.Cut)
}

// How far a setback or width may move to spare a setup.
const (
	tryInch   = measure.Inch / 8
	tryMetric = 3 * measure.Millimetre
)

// edits lists the changes to the cuts of a setup that are worth trying, the
// least trouble first, and of these the smallest.
func (t *trier) edits(s *deck.Setup) []edit {
	var edits []edit
	seen := map[string]bool{}
	for i := range s.Runs {
		r := &s.Runs[i]
		for _, e := range slices.Concat(t.moves(s, r), t.widths(r), t.loosenings(r)) {
			if !seen[e.text] {
				seen[e.text] = true
				edits = append(edits, e)
			}
		}
	}
	slices.SortStableFunc(edits, func(a, b edit) int {
		return cmp.Or(cmp.Compare(a.order, b.order), cmp.Compare(a.size, b.size))
	})
	return edits
}

func (t *trier) text(l measure.Length) string {
	return t.d.Plan.Shop.Scale.Say(l)
}

func (t *trier) most() measure.Length {
	if t.d.Plan.Shop.Scale.Unit == measure.Millimetres {
		return tryMetric
	}
	return tryInch
}

// measure changes a length of every cut that has it as this one has.
func (t *trier) measure(c *joinery.Cut, word string, to measure.Length, of func(*joinery.Cut) *measure.Length) (edit, bool) {
	from := *of(c)
	size := (to - from).Abs()
	if to <= 0 || size == 0 || size > t.most() {
		return edit{}, false
	}
	return edit{
		text: fmt.Sprintf("%s %s instead of %s on %s", word, t.text(to), t.text(from), cutName(c)),
		size: size,
		like: func(o *joinery.Cut) bool { return o.Kind == c.Kind && o.Name == c.Name && *of(o) == from },
		make: func(o *joinery.Cut) { *of(o) = to },
	}, true
}

// moves lists how a run's cut could come to the fence distance of another
// setup with the same bit.
func (t *trier) moves(s *deck.Setup, r *deck.Run) []edit {
	var edits []edit
	for i := range t.d.Setups {
		o := &t.d.Setups[i]
		if o.Bit != s.Bit {
			continue
		}
		by := o.Fence.NearEdge - s.Fence.NearEdge
		word, to, of := "setback", r.Cut.Start.Distance+by, func(c *joinery.Cut) *measure.Length { return &c.Start.Distance }
		switch {
		case r.Cut.Kind.Has("setback") && r.Cut.Start.Centred:
			continue
		case r.Cut.Kind.Has("setback") && r.Step.Fence != r.Cut.Start.From:
			to = r.Cut.Start.Distance - by
		case r.Cut.Kind.Has("setback"):
		case r.Cut.Kind.Has("width"):
			word, to, of = "width", r.Cut.Width+by, width
		case !r.Cut.Kind.Has("length"):
			continue
		default:
			word, to, of = "length", r.Cut.Length+by, func(c *joinery.Cut) *measure.Length { return &c.Length }
		}
		if e, ok := t.measure(r.Cut, word, to, of); ok {
			edits = append(edits, e)
		}
	}
	return edits
}

func width(c *joinery.Cut) *measure.Length { return &c.Width }

// widths lists the bits that a run's cut could be as wide as.
func (t *trier) widths(r *deck.Run) []edit {
	if !r.Cut.Kind.Has("width") {
		return nil
	}
	var edits []edit
	for i := range t.d.Plan.Shop.Bits {
		if e, ok := t.measure(r.Cut, "width", t.d.Plan.Shop.Bits[i].True(), width); ok {
			edits = append(edits, e)
		}
	}
	return edits
}

// loosenings lists what a run's cut could do without: its side at the fence,
// or a cut that it waits for.
func (t *trier) loosenings(r *deck.Run) []edit {
	var edits []edit
	cut := r.Cut
	like := func(o *joinery.Cut) bool { return o.Kind == cut.Kind && o.Name == cut.Name }
	if cut.Kind.Has("setback") && !cut.Fence.Either {
		edits = append(edits, edit{
			text:  "fence: either on " + cutName(cut),
			order: 1,
			like:  like,
			make:  func(o *joinery.Cut) { o.Fence = joinery.Fencing{Either: true} },
		})
	}
	for _, name := range cut.After {
		edits = append(edits, edit{
			text:  fmt.Sprintf("%s not after %q", cutName(cut), name),
			order: 2,
			like:  like,
			make: func(o *joinery.Cut) {
				o.After = slices.DeleteFunc(slices.Clone(o.After), func(n string) bool { return n == name })
			},
		})
	}
	return edits
}

// changed returns the plan with a change made to all cuts that are like the
// one it is for, mirrored ones included. It fails where one no longer fits.
func (t *trier) changed(e edit) (*joinery.Plan, bool) {
	plan := *t.d.Plan
	plan.Pieces = slices.Clone(plan.Pieces)
	for i := range plan.Pieces {
		p := &plan.Pieces[i]
		p.Cuts = slices.Clone(p.Cuts)
		for j := range p.Cuts {
			c := &p.Cuts[j]
			if !e.like(c) {
				continue
			}
			e.make(c)
			if len(c.Lay(p, plan.Shop.Scale)) > 0 {
				return nil, false
			}
		}
	}
	return &plan, true
}
