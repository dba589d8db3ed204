package whatif

import (
	"context"
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// Explanation says why a setup is there, and what would spare it.
type Explanation struct {
	Setup   *deck.Setup
	Reasons []string // a sentence each, without a full stop; at least one
	Cutting string   // what its passes take, and what those of another bit would
	Saving  *Saving  // the smallest change found that spares a setup; nil for none
	Untried bool     // there is none, but some changes were not tried, the limit being reached
}

// Explain says of every setup of a whole deck why it is there, and tries small
// changes to the plan that would spare one: a setback or width that comes to a
// neighbour's or a bit's, the other side to the fence, one `after` less. It says
// what an end costs that is cut after the long edge, where it left some changes
// untried, there being too many. Called off, it explains without savings from there
// on.
func Explain(ctx context.Context, d *deck.Deck) ([]Explanation, error) {
	jobs, err := setup.Jobs(d.Plan)
	if err != nil {
		return nil, err
	}
	x := &explainer{d: d, jobs: map[channelName]*setup.Job{}}
	for i := range jobs {
		x.jobs[channelNamed(jobs[i].Cut, jobs[i].Channel)] = &jobs[i]
	}
	t := newTrier(ctx, d)
	ends := t.endsFirst()
	all := make([]Explanation, len(d.Setups))
	for i := range d.Setups {
		saving, untried := t.saving(&d.Setups[i])
		all[i] = Explanation{&d.Setups[i], append(x.reasons(i), ends[i]...), x.cutting(&d.Setups[i]), saving, untried}
	}
	return all, nil
}

// channelName tells the channels of a plan apart.
type channelName struct {
	cut  *joinery.Cut
	part string
}

func channelNamed(cut *joinery.Cut, ch joinery.Channel) channelName { return channelName{cut, ch.Part} }

// explainer finds the reasons of setups.
type explainer struct {
	d    *deck.Deck
	jobs map[channelName]*setup.Job
}

func (x *explainer) reasons(i int) []string {
	s := &x.d.Setups[i]
	reasons := slices.Concat(x.again(i), x.widths(s), x.onlyHere(s))
	if near := x.near(s); near != "" {
		reasons = append(reasons, near)
	}
	if len(reasons) == 0 {
		reasons = []string{"its cuts could be made elsewhere, but " + x.noLess()}
	}
	return reasons
}

// noLess says how sure it is that nothing else takes less.
func (x *explainer) noLess() string {
	if x.d.Changes.Proved {
		return "no other order takes less"
	}
	return "nothing was found that takes less"
}

// again tells why a bit and fence distance, or a bit, comes back.
func (x *explainer) again(i int) []string {
	s := &x.d.Setups[i]
	const both, bitAlone = "the bit and fence distance of setup %d once more", "the bit of setup %d comes back"
	before, what := -1, ""
	for j := range i {
		o := &x.d.Setups[j]
		switch {
		case o.Key() == s.Key():
			before, what = j, both
		case o.Bit == s.Bit && x.d.Setups[i-1].Bit != s.Bit && what != both:
			before, what = j, bitAlone
		}
	}
	if before < 0 {
		return nil
	}
	reason := fmt.Sprintf(what, x.d.Setups[before].Number)
	waits := x.waits(i, before)
	if waits == "" && before == i-1 && what == both {
		waits = "one ladder for both would take more time in passes than it spares in heights"
	}
	if waits != "" {
		reason += ": " + waits
	}
	return []string{reason}
}

// waits names a run of a setup that must come after one made since another
// setup.
func (x *explainer) waits(i, since int) string {
	for _, r := range x.d.Setups[i].Runs {
		for j := since; j < i; j++ {
			for _, o := range x.d.Setups[j].Runs {
				if o.Piece == r.Piece && slices.Contains(r.Cut.After, o.Cut.Name) {
					return fmt.Sprintf("in %s, %s must come after %s", r.Piece.Name, cutName(r.Cut), cutName(o.Cut))
				}
			}
		}
	}
	return ""
}

// cutName is a cut as a maker speaks of it.
func cutName(c *joinery.Cut) string { return fmt.Sprintf("the %s %q", c.Kind, c.Name) }

// widths tells which cuts take several runs, and why.
func (x *explainer) widths(s *deck.Setup) []string {
	var reasons []string
	for i := range s.Runs {
		r := &s.Runs[i]
		if r.Step.Of < 2 || r.Step.Turned {
			continue
		}
		width := r.Channel.Width
		reason := fmt.Sprintf("%s is %s wide and no bit that can cut it is: run %d of %d", cutName(r.Cut), x.text(width), r.Step.Position, r.Step.Of)
		if bit := x.inOneRun(r); bit != nil {
			reason = fmt.Sprintf("%s could be made in one run with the %s, but %s: run %d of %d",
				cutName(r.Cut), bit.Name, x.noLess(), r.Step.Position, r.Step.Of)
		}
		if !slices.Contains(reasons, reason) {
			reasons = append(reasons, reason)
		}
	}
	return few(reasons, " such")
}

// inOneRun returns a bit that makes a run's channel in one run.
func (x *explainer) inOneRun(r *deck.Run) *joinery.Bit {
	job := x.jobs[channelNamed(r.Cut, r.Channel)]
	if job == nil {
		return nil
	}
	for _, w := range job.Ways {
		if len(w.Steps) == 1 {
			return w.Bit
		}
	}
	return nil
}

// onlyHere names the cuts that every way would bring to this setup.
func (x *explainer) onlyHere(s *deck.Setup) []string {
	var names []string
	for i := range s.Runs {
		r := &s.Runs[i]
		job := x.jobs[channelNamed(r.Cut, r.Channel)]
		if job == nil || !slices.ContainsFunc(job.Ways, func(w setup.Way) bool { return !uses(&w, s.Key()) }) {
			if name := cutName(r.Cut); !slices.Contains(names, name) {
				names = append(names, name)
			}
		}
	}
	if len(names) == 0 {
		return nil
	}
	return []string{"no other bit or fence distance makes " + plantext.List(few(names, ""), "and")}
}

// uses reports whether some run of the way is made at a setup.
func uses(w *setup.Way, k deck.Key) bool {
	return slices.ContainsFunc(w.Steps, func(r deck.Step) bool { return r.Key() == k })
}

// nearInch and nearMetric are how close two fence distances are when one might
// be meant to be the other.
const (
	nearInch   = measure.Inch / 16
	nearMetric = 2 * measure.Millimetre
)

// near tells which setup of the same bit has the fence almost as this one.
func (x *explainer) near(s *deck.Setup) string {
	most := nearInch
	if x.d.Plan.Shop.Scale.Unit == measure.Millimetres {
		most = nearMetric
	}
	var nearest *deck.Setup
	for i := range x.d.Setups {
		o := &x.d.Setups[i]
		apart := (o.Fence.NearEdge - s.Fence.NearEdge).Abs()
		if o.Bit == s.Bit && apart > 0 && apart <= most {
			nearest, most = o, apart
		}
	}
	if nearest == nil {
		return ""
	}
	return fmt.Sprintf("the fence stands only %s from where it is for setup %d", x.text(most), nearest.Number)
}

func (x *explainer) text(l measure.Length) string {
	return x.d.Plan.Shop.Scale.Say(l)
}

// mostListed is how many things a reason names before it counts the rest.
const mostListed = 3

// few keeps the first of a list and counts the rest.
func few(all []string, what string) []string {
	if len(all) <= mostListed {
		return all
	}
	return append(slices.Clone(all[:mostListed]), fmt.Sprintf("%d more%s", len(all)-mostListed, what))
}
