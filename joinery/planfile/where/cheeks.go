package where

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"

	"go.yaml.in/yaml/v4"
)

// Cheeks reads what a tenon at a side takes off each side beside it: each by
// its name, or one depth for all four.
func Cheeks(f *yamlfile.Fields, at joinery.Side) []joinery.Cheek {
	if !f.Has("cheeks") {
		return nil
	}
	n := f.Value("cheeks")
	if n.Kind == yaml.ScalarNode {
		return allRound(at, cheek(f, "cheeks"))
	}
	if !f.File.Mapping(n, "each cheek has its own depth", "write "+keys.Example("cheeks")+", what is taken off each side") {
		return nil
	}
	sides := f.File.Fields(n, "cheeks", keys.SideNames())
	var cheeks []joinery.Cheek
	for _, s := range joinery.Sides {
		if sides.Written(s.String()) {
			cheeks = append(cheeks, joinery.Cheek{Side: s, Depth: cheek(sides, s.String())})
		}
	}
	if len(n.Content) == 0 {
		f.File.Fault(n, "write "+keys.Example("cheeks"), "no cheek is named")
	}
	return cheeks
}

// allRound is a cheek of one depth on each side of a tenon; none where the
// depth or the tenon's end was faulted.
func allRound(at joinery.Side, depth measure.Length) []joinery.Cheek {
	var cheeks []joinery.Cheek
	for _, s := range joinery.Sides {
		if depth > 0 && at != joinery.NoSide && s.Dimension() != at.Dimension() {
			cheeks = append(cheeks, joinery.Cheek{Side: s, Depth: depth})
		}
	}
	return cheeks
}

// cheek reads the depth of a cheek.
func cheek(f *yamlfile.Fields, key string) measure.Length {
	text, n, ok := f.Scalar(key)
	if !ok {
		return 0
	}
	depth, ok := f.File.Length(n, text)
	if ok && depth == 0 {
		remedy := "leave " + key + " out: a side that is not named keeps its wood"
		if key == "cheeks" {
			remedy = "write " + keys.Example(key)
		}
		f.File.Fault(n, remedy, "nothing is taken off the %s", key)
	}
	return depth
}
