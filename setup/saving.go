package setup

import (
	"cmp"
	"context"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/setup/search"
)

// Saving is a change to the plan that spares setups.
type Saving struct {
	Change string  // "setback 17/64 in instead of 1/4 in on the groove "panel""
	Less   Changes // what need not be set; negative where there is more to set
	Setups int     // how many setups there are less
}

// Limits on what is tried to spare a setup.
const (
	tryInch   = joinery.Inch / 8 // how far a setback or width may move
	tryMetric = 3 * joinery.Millimetre
	trySteps  = 3_000_000 // of search, for one change
	mostTries = 80        // for a deck
	mostOfOne = 12        // for one setup
	mostToTry = 300       // cuts in a plan whose setups are worth trying
)

// trier tries changes to a deck's plan.
type trier struct {
	ctx   context.Context
	d     *Deck
	known map[string]*Saving // by change; nil where it spares nothing
	left  int
}

func newTrier(ctx context.Context, d *Deck) *trier {
	t := &trier{ctx: ctx, d: d, known: map[string]*Saving{}, left: mostTries}
	cuts := 0
	for i := range d.Plan.Pieces {
		cuts += len(d.Plan.Pieces[i].Cuts)
	}
	if cuts > mostToTry {
		t.left = 0
	}
	return t
}

// edit is a change to every cut of one kind, name and measure.
type edit struct {
	text  string
	size  joinery.Length // how much is changed
	order int            // of changes of one size, the least trouble first
	like  func(*joinery.Cut) bool
	make  func(*joinery.Cut)
}

// saving returns the smallest change that spares a setup by changing one of its
// cuts.
func (t *trier) saving(s *Setup) *Saving {
	edits := t.edits(s)
	for _, e := range edits[:min(len(edits), mostOfOne)] {
		if saved := t.try(e); saved != nil {
			return saved
		}
	}
	return nil
}

// try makes the deck of the plan with a change, and says what it saves.
func (t *trier) try(e edit) *Saving {
	if saved, ok := t.known[e.text]; ok {
		return saved
	}
	if t.left == 0 || t.ctx.Err() != nil {
		return nil
	}
	t.left--
	t.known[e.text] = t.saved(e)
	return t.known[e.text]
}

func (t *trier) saved(e edit) *Saving {
	plan, ok := t.changed(e)
	if !ok {
		return nil
	}
	after, err := MakeWith(t.ctx, plan, Options{Search: search.Limit{Steps: trySteps}})
	if err != nil || len(after.Setups) >= len(t.d.Setups) || after.Changes.Time >= t.d.Changes.Time || t.warnsMore(after) {
		return nil
	}
	a, b := t.d.Changes, after.Changes
	return &Saving{
		Change: e.text,
		Setups: len(t.d.Setups) - len(after.Setups),
		Less: Changes{
			Bits: a.Bits - b.Bits, Fences: a.Fences - b.Fences, Heights: a.Heights - b.Heights, Stops: a.Stops - b.Stops,
			Time: a.Time - b.Time,
		},
	}
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

// warnsMore reports whether a deck has a warning that this one has not.
func (t *trier) warnsMore(after *Deck) bool {
	type about struct{ code, piece, cut string }
	before := map[about]int{}
	for _, w := range t.d.Warnings {
		before[about{w.Code, w.Piece, w.Cut}]++
	}
	for _, w := range after.Warnings {
		a := about{w.Code, w.Piece, w.Cut}
		if before[a]--; before[a] < 0 {
			return true
		}
	}
	return false
}

// edits lists the changes to the cuts of a setup that are worth trying, the
// smallest first.
func (t *trier) edits(s *Setup) []edit {
	var edits []edit
	seen := map[string]bool{}
	for i := range s.Cards {
		c := &s.Cards[i]
		for _, e := range slices.Concat(t.moves(s, c), t.widths(c), t.loosenings(c)) {
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

func (t *trier) text(l joinery.Length) string {
	scale := t.d.Plan.Shop.Scale
	return scale.Fine(l) + " " + scale.Unit.String()
}

func (t *trier) most() joinery.Length {
	if t.d.Plan.Shop.Scale.Unit == joinery.Millimetres {
		return tryMetric
	}
	return tryInch
}

// measure changes a length of every cut that has it as this one has.
func (t *trier) measure(c *joinery.Cut, word string, to joinery.Length, of func(*joinery.Cut) *joinery.Length) (edit, bool) {
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

// moves lists how a card's cut could come to the fence distance of another
// setup with the same bit.
func (t *trier) moves(s *Setup, c *Card) []edit {
	var edits []edit
	for i := range t.d.Setups {
		o := &t.d.Setups[i]
		if o.Bit != s.Bit {
			continue
		}
		by := o.Fence.NearEdge - s.Fence.NearEdge
		word, to, of := "setback", c.Cut.Start.Distance+by, func(c *joinery.Cut) *joinery.Length { return &c.Start.Distance }
		switch {
		case c.Cut.Kind.Has("setback") && c.Cut.Start.Centred:
			continue
		case c.Cut.Kind.Has("setback") && c.Run.Fence != c.Cut.Start.From:
			to = c.Cut.Start.Distance - by
		case c.Cut.Kind.Has("setback"):
		case c.Cut.Kind.Has("width"):
			word, to, of = "width", c.Cut.Width+by, width
		default:
			word, to, of = "length", c.Cut.Length+by, func(c *joinery.Cut) *joinery.Length { return &c.Length }
		}
		if e, ok := t.measure(c.Cut, word, to, of); ok {
			edits = append(edits, e)
		}
	}
	return edits
}

func width(c *joinery.Cut) *joinery.Length { return &c.Width }

// widths lists the bits that a card's cut could be as wide as.
func (t *trier) widths(c *Card) []edit {
	if !c.Cut.Kind.Has("width") {
		return nil
	}
	var edits []edit
	for i := range t.d.Plan.Shop.Bits {
		if e, ok := t.measure(c.Cut, "width", t.d.Plan.Shop.Bits[i].True(), width); ok {
			edits = append(edits, e)
		}
	}
	return edits
}

// loosenings lists what a card's cut could do without: its side at the fence,
// or a cut that it waits for.
func (t *trier) loosenings(c *Card) []edit {
	var edits []edit
	cut := c.Cut
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
