package planfile

import (
	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// readCheeks reads what a tenon at a side takes off each side beside it: each by
// its name, or one depth for all four.
func readCheeks(f *fields, at joinery.Side) []joinery.Cheek {
	if !f.has("cheeks") {
		return nil
	}
	n := f.value("cheeks")
	if n.Kind == yaml.ScalarNode {
		return allRound(at, cheek(f, "cheeks"))
	}
	if !f.r.mapping(n, "each cheek has its own depth", "write "+example("cheeks")+", what is taken off each side") {
		return nil
	}
	sides := f.r.fields(n, "cheeks", sideNames())
	var cheeks []joinery.Cheek
	for _, s := range joinery.Sides {
		if sides.written(s.String()) {
			cheeks = append(cheeks, joinery.Cheek{Side: s, Depth: cheek(sides, s.String())})
		}
	}
	if len(n.Content) == 0 {
		f.r.fault(n, "write "+example("cheeks"), "no cheek is named")
	}
	return cheeks
}

// allRound is a cheek of one depth on each side of a tenon; none where the
// depth or the tenon's end was faulted.
func allRound(at joinery.Side, depth joinery.Length) []joinery.Cheek {
	var cheeks []joinery.Cheek
	for _, s := range joinery.Sides {
		if depth > 0 && at != joinery.NoSide && s.Dimension() != at.Dimension() {
			cheeks = append(cheeks, joinery.Cheek{Side: s, Depth: depth})
		}
	}
	return cheeks
}

// cheek reads the depth of a cheek.
func cheek(f *fields, key string) joinery.Length {
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	depth, ok := f.r.length(n, text)
	if ok && depth == 0 {
		remedy := "leave " + key + " out: a side that is not named keeps its wood"
		if key == "cheeks" {
			remedy = "write " + example(key)
		}
		f.r.fault(n, remedy, "nothing is taken off the %s", key)
	}
	return depth
}
