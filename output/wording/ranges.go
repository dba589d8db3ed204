package wording

import (
	"slices"
	"strconv"
	"strings"

	"fencecard/setup/deck"
)

// Ranges writes the numbers of runs in running order, "3.1–3.4, 3.7, 3.8".
func Ranges(runs []*deck.Run) string {
	return strings.Join(ranges(runs, func(_ int, r *deck.Run) string { return r.Number() }), ", ")
}

// among names some of the runs, all of which are given: "3.1–4, 7, 4.2", with the
// number of a setup once, or "all but 3.5" where that is shorter.
func among(runs, all []*deck.Run) string {
	if len(runs) <= 2 {
		return Ranges(runs)
	}
	runs = slices.SortedFunc(slices.Values(runs), byNumber)
	text := strings.Join(ranges(runs, func(i int, r *deck.Run) string {
		if i == 0 || r.Setup != runs[i-1].Setup {
			return r.Number()
		}
		return strconv.Itoa(r.Index)
	}), ", ")
	others := slices.DeleteFunc(slices.Clone(all), func(r *deck.Run) bool { return slices.Contains(runs, r) })
	if len(others) > 0 && len(others) <= 2 {
		if but := "all but " + Ranges(others); len(but) < len(text) {
			return but
		}
	}
	return text
}

// ranges are the parts of a list of runs, each number written by its place.
func ranges(runs []*deck.Run, number func(i int, r *deck.Run) string) []string {
	var parts []string
	for i := 0; i < len(runs); {
		k := i
		for k+1 < len(runs) && runs[k+1].Setup == runs[k].Setup && runs[k+1].Index == runs[k].Index+1 {
			k++
		}
		if k < i+2 { // two numbers are plainer than a range of two
			k = i
		}
		part := number(i, runs[i])
		if k > i {
			part += "–" + number(k, runs[k])
		}
		parts = append(parts, part)
		i = k + 1
	}
	return parts
}
