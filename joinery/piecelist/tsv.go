package piecelist

import (
	"iter"
	"strings"
)

// tableRows gives the rows of an embedded table: comments begin with "#", cells
// are parted by tabs.
func tableRows(table string) iter.Seq[[]string] {
	return func(yield func([]string) bool) {
		for line := range strings.Lines(table) {
			line = strings.TrimSuffix(line, "\n")
			if line == "" || line[0] == '#' {
				continue
			}
			if !yield(strings.Split(line, "\t")) {
				return
			}
		}
	}
}
