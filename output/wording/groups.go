package wording

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/setup/deck"
)

// Group is runs of one setup that need the same pair of marks. Between stop
// blocks a group climbs the ladder by itself.
type Group struct {
	Climb int
	Pair  *deck.Pair // nil where they need none
	Runs  []*deck.Run
}

// Groups parts the runs of a setup by their pairs, in running order; those
// turned alike stand together.
func Groups(u *deck.Setup) []Group {
	var groups []Group
	for i := range u.Runs {
		r := &u.Runs[i]
		at := slices.IndexFunc(groups, func(g Group) bool {
			return g.Climb == r.Climb && (g.Pair == nil && r.Pair == "" || g.Pair != nil && g.Pair.Letter == r.Pair)
		})
		if at < 0 {
			at = len(groups)
			groups = append(groups, Group{Climb: r.Climb, Pair: u.Pair(r.Pair)})
		}
		groups[at].Runs = append(groups[at].Runs, r)
	}
	for i := range groups {
		groups[i].Runs = alike(groups[i].Runs)
	}
	return groups
}

// HeightByHeight says that a setup of several runs and heights is gone through height
// by height, not pair by pair; it is "" where there is no choice. Where stop blocks
// are set, what stands over each setting of them says it.
func HeightByHeight(u *deck.Setup, blocks bool) string {
	if blocks || len(u.Runs) < 2 || len(u.Heights) < 2 {
		return ""
	}
	who := "all runs"
	unmarked := slices.ContainsFunc(u.Runs, func(r deck.Run) bool { return r.Pair == "" })
	if n := len(u.Marks); n > 1 && !unmarked {
		to := " to "
		if n == 2 {
			to = " and "
		}
		who = u.Marks[0].Letter + to + u.Marks[n-1].Letter
	}
	return who + " at one height, then the next"
}

// AllAtOneHeight is the same on the card of a piece.
const AllAtOneHeight = "At a setup all runs at one height, then the next."

// alike puts runs together whose pieces are turned alike, each where the first
// of them is.
func alike(runs []*deck.Run) []*deck.Run {
	first := map[deck.Orders]int{}
	at := make(map[*deck.Run]int, len(runs))
	for i, r := range runs {
		o := r.Orders()
		if _, seen := first[o]; !seen {
			first[o] = i
		}
		at[r] = first[o]
	}
	sorted := slices.Clone(runs)
	slices.SortStableFunc(sorted, func(a, b *deck.Run) int { return at[a] - at[b] })
	return sorted
}

// RungNames are the numbers in the setup's ladder, from 1, of the heights that
// a run uses.
func RungNames(u *deck.Setup, r *deck.Run) []int {
	var names []int
	for i, h := range u.Heights {
		if slices.Contains(r.Heights, h) {
			names = append(names, i+1)
		}
	}
	return names
}

// AllRungs are the numbers of all heights of a setup's ladder.
func AllRungs(u *deck.Setup) []int {
	names := make([]int, len(u.Heights))
	for i := range names {
		names[i] = i + 1
	}
	return names
}

// CutName names the cut of a run, its part, and which of several runs it is.
func CutName(r *deck.Run) string { return CutPart(r) + Which(r) }

// CutPart names the cut of a run and its part.
func CutPart(r *deck.Run) string {
	name := r.Cut.Kind.Name + " " + r.Cut.Name
	if r.Channel.Part != "" { // which only some kinds have
		name = r.Cut.Name + ", " + strings.TrimSuffix(r.Channel.Part, " cheek")
	}
	return name
}

// Which says how often a run goes over the bit at every height, and which of the
// runs of its cut it is; it is "" where once is all.
func Which(r *deck.Run) string {
	name := ""
	if n := r.Sideways(); n > 1 {
		name += fmt.Sprintf(", %d nibbles", n)
	}
	switch {
	case r.Step.Turned:
		name += ", pass " + of(r.Step.Position, r.Step.Of) + ", turned end for end"
	case r.Step.Of > 1:
		name += ", " + of(r.Step.Position, r.Step.Of)
	}
	return name
}
