package wording

import (
	"strings"

	"fencecard/setup/deck"
)

// Ranges writes the numbers of runs in running order, "3.1–3.4, 3.7, 3.8".
func Ranges(runs []*deck.Run) string {
	var parts []string
	for i := 0; i < len(runs); {
		k := i
		for k+1 < len(runs) && runs[k+1].Setup == runs[k].Setup && runs[k+1].Index == runs[k].Index+1 {
			k++
		}
		if k < i+2 { // two numbers are plainer than a range of two
			k = i
		}
		part := runs[i].Number()
		if k > i {
			part += "–" + runs[k].Number()
		}
		parts = append(parts, part)
		i = k + 1
	}
	return strings.Join(parts, ", ")
}
