package output

import (
	"fencecard/joinery"
	"fmt"
)

// plural counts things: "no cards", "1 card", "2 cards".
func plural(n int, thing string) string {
	return count(n, thing, thing+"s")
}

func count(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + many
	case 1:
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// unitWord is a unit spelled out.
func unitWord(u joinery.Unit) string {
	if u == joinery.Millimetres {
		return "millimetres"
	}
	return "inches"
}

// beside is what stands beside a reading that is not exact: the true length as
// a decimal.
func beside(r joinery.Reading) string {
	if r.Remainder == 0 {
		return ""
	}
	return "(" + r.Exact + ")"
}
