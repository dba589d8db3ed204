package wording

import (
	"slices"
	"strings"

	"fencecard/joinery/pattern"
	"fencecard/setup/deck"
)

// figure is a length or another number in a caution.
var figure = pattern.New(`\d+ \d+/\d+|\d+/\d+|\d+(\.\d+)?`)

// merged says cautions once that differ in their figures alone: in the words of
// the first, and behind them the figures of the others, each with its runs.
func merged(all []Minding, runs []*deck.Run) []Minding {
	type form struct{ code, words string }
	at := map[form]int{}
	var some []Minding
	var others [][]string
	for _, c := range all {
		what := form{c.Code, figure.ReplaceAllString(c.Brief, "#")}
		k, ok := at[what]
		if !ok {
			at[what] = len(some)
			some, others = append(some, c), append(others, nil)
			continue
		}
		others[k] = append(others[k], Among(c.Runs, runs)+": "+strings.Join(figure.FindAllString(c.Brief), ", "))
		some[k].Runs = slices.Concat(some[k].Runs, c.Runs)
	}
	for i := range some {
		slices.SortFunc(some[i].Runs, byNumber)
		if others[i] != nil {
			some[i].Brief += " (" + strings.Join(others[i], "; ") + ")"
		}
	}
	return some
}

func byNumber(a, b *deck.Run) int {
	if a == nil || b == nil {
		return 0
	}
	return a.Index - b.Index
}
