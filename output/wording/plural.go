package wording

import (
	"fmt"

	"fencecard/joinery/measure"
)

// Plural counts things: "no cards", "1 card", "2 cards".
func Plural(n int, thing string) string {
	return count(n, thing, thing+"s")
}

// count counts things whose plural has a word of its own.
func count(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + many
	case 1:
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// UnitWord is a unit spelled out.
func UnitWord(u measure.Unit) string {
	if u == measure.Millimetres {
		return "millimetres"
	}
	return "inches"
}

// Beside is what stands beside a reading that is not exact: the true length.
func Beside(r measure.Reading) string {
	if r.Remainder == 0 {
		return ""
	}
	return "(" + r.Exact + ")"
}

// of counts one of several: "1 of 3".
func of(n, all int) string { return fmt.Sprintf("%d of %d", n, all) }
