package wording

import (
	"slices"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// OtherRuns says in what the runs of a kept setup differ from those of another at the
// same bit and fence: "its work 28 long, here 29".
func OtherRuns(kept, here *deck.Setup, scale measure.Scale) string {
	var all []string
	for _, p := range []struct {
		before, behind string
		of             func(r *deck.Run) (measure.Length, bool)
	}{
		{"its work ", " long", func(r *deck.Run) (measure.Length, bool) { return r.Length, true }},
		{"its cuts begin at ", "", func(r *deck.Run) (measure.Length, bool) { return r.A, r.Start != nil }},
		{"its cuts end at ", "", func(r *deck.Run) (measure.Length, bool) { return r.B, r.Stop != nil }},
		{"its cuts ", " deep", func(r *deck.Run) (measure.Length, bool) { return r.Channel.Depth, true }},
	} {
		if was, is := these(kept, p.of), these(here, p.of); !slices.Equal(was, is) {
			all = append(all, p.before+those(was, scale)+p.behind+", here "+those(is, scale))
		}
	}
	if kept.Carriage != here.Carriage {
		all = append(all, "its carriage "+scale.Format(kept.Carriage)+" thick, here "+scale.Format(here.Carriage))
	}
	if all == nil {
		return "other work, or turned otherwise"
	}
	return strings.Join(all, "; ")
}

// these are the lengths of the runs of a setup, each once.
func these(u *deck.Setup, of func(r *deck.Run) (measure.Length, bool)) []measure.Length {
	var all []measure.Length
	for i := range u.Runs {
		if l, has := of(&u.Runs[i]); has {
			all = append(all, l)
		}
	}
	slices.Sort(all)
	return slices.Compact(all)
}

// mostThose bounds how many lengths are named.
const mostThose = 3

func those(ls []measure.Length, scale measure.Scale) string {
	if len(ls) == 0 {
		return "none"
	}
	var words []string
	for _, l := range ls[:min(len(ls), mostThose)] {
		words = append(words, scale.Format(l))
	}
	if len(ls) > mostThose {
		words = append(words, "...")
	}
	return strings.Join(words, ", ")
}
