package wording

import (
	"strings"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// Since says what a setup book has learnt of a setup that its papers do not have yet:
// "the fence at 33/64 in to the near edge, not 1/2 in". It is "" where they have it.
func Since(printed, now *deck.Setup, scale measure.Scale) string {
	var all []string
	say := func(what string, is, was measure.Length, behind string) {
		if is != was {
			all = append(all, what+" at "+scale.Say(is)+behind+", not "+scale.Say(was))
		}
	}
	if is, shaped := Forward(now); shaped {
		was, _ := Forward(printed)
		say("the fence", is, was, " forward of the pilot")
	} else {
		say("the fence", now.SetTo().NearEdge, printed.SetTo().NearEdge, " to the near edge")
	}
	if n := len(now.Heights); n > 0 {
		full := now.Heights[n-1]
		say("the bit at full height", now.SetAt(full), printed.SetAt(full), "")
	}
	return strings.Join(all, "; ")
}
