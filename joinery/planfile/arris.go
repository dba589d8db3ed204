package planfile

import (
	"strings"

	"fencecard/joinery"
)

// readArris reads the two sides that meet at an arris: "top front".
func readArris(f *fields) (down, fence joinery.Side) {
	text, n, ok := f.scalar("on")
	if !ok {
		return joinery.NoSide, joinery.NoSide
	}
	words := strings.Fields(strings.ReplaceAll(strings.ReplaceAll(text, "/", " "), ",", " "))
	if len(words) != 2 {
		f.r.fault(n, "write the face that lies on the table and the edge at the fence, such as "+example("on")+
			"; an edge that is curved, or run along a pilot, is not for a fence and gets no sheet", "%s names no arris", quoted(text))
		return joinery.NoSide, joinery.NoSide
	}
	return f.r.side(n, words[0]), f.r.side(n, words[1])
}
