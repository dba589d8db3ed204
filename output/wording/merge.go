package wording

import (
	"cmp"
	"slices"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/setup/deck"
	"fencecard/setup/remark"
)

const oneFigure = `(\d+ \d+/\d+|\d+/\d+|\d+(\.\d+)?)`

// figure is a length or another number in a caution.
var figure = pattern.New(oneFigure)

// figureOf is a figure with its unit, where it has one: bare behind the numbers of runs
// it reads as one more of them.
var figureOf = pattern.New(oneFigure + `( in\b| mm\b)?`)

// merged says cautions once that differ in their figures alone: in the words of
// the gravest, and behind them the figures of the others, each with its runs.
func merged(all []Minding, runs []*deck.Run) []Minding {
	type form struct{ code, words string }
	at := map[form]int{}
	var some [][]Minding
	for _, c := range all {
		what := form{c.Code, figure.ReplaceAllString(c.Brief, "#")}
		k, ok := at[what]
		if !ok {
			k = len(some)
			at[what], some = k, append(some, nil)
		}
		some[k] = append(some[k], c)
	}
	once := make([]Minding, len(some))
	for i, alike := range some {
		slices.SortStableFunc(alike, gravestFirst)
		once[i] = alike[0]
		var others []string
		for _, c := range alike[1:] {
			others = append(others, among(c.Runs, runs)+": "+strings.Join(figureOf.FindAllString(c.Brief), ", "))
			once[i].Runs = slices.Concat(once[i].Runs, c.Runs)
		}
		slices.SortFunc(once[i].Runs, byNumber)
		if others != nil {
			once[i].Brief += " (" + strings.Join(others, "; ") + ")"
		}
	}
	return once
}

// gravestFirst compares two cautions of one code by the first figure in which they
// differ.
func gravestFirst(a, b Minding) int {
	x, y := figure.FindAllString(a.Brief), figure.FindAllString(b.Brief)
	for i := range min(len(x), len(y)) {
		one, err := measure.ParseLength(x[i], measure.Inches)
		other, err2 := measure.ParseLength(y[i], measure.Inches)
		if err == nil && err2 == nil && one != other {
			return remark.Graver(a.Code, i, one, other)
		}
	}
	return 0
}

func byNumber(a, b *deck.Run) int {
	if a == nil || b == nil {
		return 0
	}
	return cmp.Or(a.Setup-b.Setup, a.Index-b.Index)
}
