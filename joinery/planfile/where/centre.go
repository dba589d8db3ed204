package where

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/yamlfile"
)

// Centre reads where the centre of a slot is: "4 from left, 3/4 from front",
// or a list of the two, either of which may be "centred".
func Centre(f *yamlfile.Fields) [2]joinery.Setback {
	var centre [2]joinery.Setback
	var lines []string
	nodes := f.OneOrMore("at")
	for _, n := range nodes {
		lines = append(lines, strings.Split(n.Value, ",")...)
	}
	if len(nodes) == 0 {
		return centre
	}
	if len(lines) != len(centre) {
		f.File.Fault(nodes[0], "write "+f.Example("at")+", with your own figures", "at says where the centre of the slot is, from two sides that meet")
		return centre
	}
	for i, text := range lines {
		n, text := nodes[min(i, len(nodes)-1)], strings.TrimSpace(text)
		if _, ok := yamlfile.IsCentred(text); ok {
			centre[i] = joinery.Setback{Centred: true}
			continue
		}
		written, side, ok := yamlfile.FromSide(text)
		if !ok {
			f.File.Fault(n, "write "+f.Example("at")+", or centred for one of the two", "%s is no distance from a side", yamlfile.Quoted(text))
			continue
		}
		distance, _ := f.File.Length(n, written)
		centre[i] = joinery.Setback{Distance: distance, From: f.File.Side(n, side)}
	}
	return centre
}
