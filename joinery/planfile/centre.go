package planfile

import (
	"strings"

	"fencecard/joinery"
)

// readCentre reads where the centre of a slot is: "4 from left, 3/4 from front",
// or a list of the two, either of which may be "centred".
func readCentre(f *fields) [2]joinery.Setback {
	var centre [2]joinery.Setback
	var lines []string
	nodes := f.oneOrMore("at")
	for _, n := range nodes {
		lines = append(lines, strings.Split(n.Value, ",")...)
	}
	if len(nodes) == 0 {
		return centre
	}
	if len(lines) != len(centre) {
		f.r.fault(nodes[0], "write "+f.example("at")+", with your own figures", "at says where the centre of the slot is, from two sides that meet")
		return centre
	}
	for i, text := range lines {
		n, text := nodes[min(i, len(nodes)-1)], strings.TrimSpace(text)
		if _, ok := isCentred(text); ok {
			centre[i] = joinery.Setback{Centred: true}
			continue
		}
		written, side, ok := fromSide(text)
		if !ok {
			f.r.fault(n, "write "+f.example("at")+", or centred for one of the two", "%s is no distance from a side", quoted(text))
			continue
		}
		distance, _ := f.r.length(n, written)
		centre[i] = joinery.Setback{Distance: distance, From: f.r.side(n, side)}
	}
	return centre
}
