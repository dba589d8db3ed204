package whatif

import (
	"context"
	"errors"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// Use is what it takes to cut a setup's joints at a kept fence distance.
type Use struct {
	Changes []Change // in the plan, the pieces in its order
	Refused []string // why the joint does not allow it; none: it does
	Beware  []string // what the plan so changed is warned of, and was not before
}

// Allowed reports whether the joints allow it.
func (u *Use) Allowed() bool { return len(u.Refused) == 0 }

// Change is one value of the plan that would have to be another.
type Change struct {
	Piece, Cut string
	Key        string // "setback", "width" or "length"
	From, To   measure.Length
	Side       joinery.Side // of a setback: where it is measured from
	Word       string       // by which the plan says it: the key, or that of a joint; "" where none does
}

// Trial tries changes of a deck's plan on copies of it.
type Trial struct {
	deck   *deck.Deck
	warned map[string]bool // what the plan is warned of as it is
}

// NewTrial makes a trial of a deck, whose plan must be one that can be made.
func NewTrial(d *deck.Deck) (*Trial, error) {
	t := &Trial{deck: d, warned: map[string]bool{}}
	plain, err := plainly(d.Plan)
	if err != nil {
		return nil, err
	}
	for _, w := range plain.Warnings {
		t.warned[w.Text] = true
	}
	return t, nil
}

// plainly makes a plan's deck without a search: warnings and faults hold
// whatever the order of the setups, and a search for each offer takes too long.
func plainly(plan *joinery.Plan) (*deck.Deck, error) {
	return setup.MakeWith(context.Background(), plan, setup.Options{Plain: true})
}

// Shift finds out whether the joints of a setup can be cut with the fence
// shifted: it makes the changes in a copy of the plan and a deck of that, so
// the rules of the joints are those that hold for every plan.
func (t *Trial) Shift(s *deck.Setup, shift measure.Length) *Use {
	u := &Use{}
	plan := copyOf(t.deck.Plan)
	moved := map[[2]string]bool{}
	for i := range s.Runs {
		r := &s.Runs[i]
		if r.Cut.Kind.Shapes {
			u.refuse("%s, %s: the pilot of the bit says where the fence stands, and from elsewhere it shapes another edge", r.Piece.Name, r.Cut.Name)
			continue
		}
		if !r.Cut.Kind.Has("width") && !r.Cut.Kind.Has("length") {
			u.refuse("%s, %s: it is as wide as its screw and lies where the screw does", r.Piece.Name, r.Cut.Name)
			continue
		}
		to, ok := shifted(r, shift)
		if !ok {
			u.refuse("%s, %s: nothing would be left of the cut", r.Piece.Name, r.Cut.Name)
			continue
		}
		for k := range plan.Pieces {
			p := &plan.Pieces[k]
			cut := p.Cut(r.Cut.Name)
			// The cuts of mirrors are written once, at what they mirror.
			if cut == nil || p.Original() != r.Piece.Original() || moved[[2]string{p.Name, cut.Name}] {
				continue
			}
			moved[[2]string{p.Name, cut.Name}] = true
			changes := change(p, cut, r, to)
			if writes(plan, p, cut) {
				u.Changes = append(u.Changes, changes...)
			}
			for _, f := range cut.Lay(p, plan.Shop.Scale) {
				u.refuse("%s", f.Problem)
			}
		}
	}
	if u.Allowed() {
		u.look(plan, s, shift)
	}
	if u.Allowed() {
		u.beware(t, plan, s, shift)
	}
	return u
}

func (u *Use) refuse(format string, args ...any) {
	if why := fmt.Sprintf(format, args...); !slices.Contains(u.Refused, why) {
		u.Refused = append(u.Refused, why)
	}
}

// refuseAll refuses for every fault of an error.
func (u *Use) refuseAll(err error) {
	var faults plantext.Faults
	if !errors.As(err, &faults) {
		u.refuse("%v", err)
	}
	for _, f := range faults {
		u.refuse("%s", f.Problem)
	}
}

// look refuses where the changed cuts could not be made with the same bit and
// the fence at the kept distance, in no more runs than before.
func (u *Use) look(plan *joinery.Plan, s *deck.Setup, shift measure.Length) {
	jobs, err := setup.Jobs(plan)
	if err != nil {
		u.refuseAll(err)
		return
	}
	for i := range s.Runs {
		r := &s.Runs[i]
		of := slices.IndexFunc(jobs, func(j setup.Job) bool {
			return j.Piece.Name == r.Piece.Name && j.Cut.Name == r.Cut.Name && j.Channel.Part == r.Channel.Part
		})
		if of < 0 || !slices.ContainsFunc(jobs[of].Ways, func(w setup.Way) bool { return runsAt(w, r, s.Fence.NearEdge+shift) }) {
			u.refuse("%s, %s: the cut would no longer be made at this fence distance alone", r.Piece.Name, r.Cut.Name)
		}
	}
}

// runsAt reports whether a way makes a run's run at a fence distance.
func runsAt(w setup.Way, c *deck.Run, near measure.Length) bool {
	return len(w.Steps) <= c.Step.Of && w.Bit.CutsLike(c.Step.Bit) &&
		slices.ContainsFunc(w.Steps, func(r deck.Step) bool { return r.NearEdge == near })
}

// beware gathers what the changed plan is warned of, and was not before, and
// cuts for which a deck made anew would choose another bit.
func (u *Use) beware(t *Trial, plan *joinery.Plan, s *deck.Setup, shift measure.Length) {
	after, err := plainly(plan)
	if err != nil {
		u.refuseAll(err)
		return
	}
	for i := range s.Runs {
		if r := &s.Runs[i]; !runAt(after, r, s.Fence.NearEdge+shift) {
			u.Beware = append(u.Beware, fmt.Sprintf("%s, %s: the deck would choose another bit for it", r.Piece.Name, r.Cut.Name))
		}
	}
	for _, w := range after.Warnings {
		if !t.warned[w.Text] {
			u.Beware = append(u.Beware, w.Text)
		}
	}
}

// runAt reports whether a deck runs a run's cut with the same bit and with the
// fence at that distance.
func runAt(d *deck.Deck, r *deck.Run, near measure.Length) bool {
	for i := range d.Setups {
		s := &d.Setups[i]
		if s.Fence.NearEdge == near && s.Bit.CutsLike(r.Step.Bit) && slices.ContainsFunc(s.Runs, func(o deck.Run) bool {
			return o.Piece.Name == r.Piece.Name && o.Cut.Name == r.Cut.Name && o.Channel.Part == r.Channel.Part
		}) {
			return true
		}
	}
	return false
}
