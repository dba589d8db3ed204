// Package where reads how a plan tells where a cut lies on its piece: its setback
// and span, the centre of a slot, the cheeks of a tenon, the arris of a moulding,
// and which side runs along the fence.
package where

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// Setback reads where the near wall is: "1/2 from front", "centred", or
// "centred from front".
func Setback(f *yamlfile.Fields, in joinery.Side) joinery.Setback {
	text, n, ok := f.Scalar("setback")
	if !ok {
		return joinery.Setback{}
	}
	if side, ok := yamlfile.IsCentred(text); ok {
		s := joinery.Setback{Centred: true}
		if side != "" {
			s.From = f.File.Side(n, side)
		}
		return s
	}
	written, side, ok := yamlfile.FromSide(text)
	if !ok {
		badSetback(f.File, n, text, in)
		return joinery.Setback{}
	}
	distance, _ := f.File.Length(n, written)
	return joinery.Setback{Distance: distance, From: f.File.Side(n, side)}
}

// badSetback faults a text that is no distance from a side.
func badSetback(r *yamlfile.File, n *yaml.Node, text string, in joinery.Side) {
	words := strings.Fields(text)
	last := joinery.NoSide
	if len(words) > 0 {
		last, _ = joinery.ParseSide(strings.ToLower(words[len(words)-1]))
	}
	switch {
	case r.IsLength(text):
		r.Fault(n, fmt.Sprintf("write setback: %s from %s", text, plantext.List(besides(in), "or")), "the setback does not say from which side")
	case last != joinery.NoSide && len(words) < 3:
		r.Fault(n, fmt.Sprintf("write setback: 1/2 from %s, with your own distance", last), "the setback has no distance")
	case last != joinery.NoSide && r.IsLength(strings.Join(words[:len(words)-2], " ")):
		r.Fault(n, fmt.Sprintf("write setback: %s from %s", strings.Join(words[:len(words)-2], " "), last), "%s is no distance from a side", yamlfile.Quoted(text))
	case plantext.Nearest(text, []string{"centred"}) != "" || slices.Contains(words, "middle"):
		r.Fault(n, "write setback: centred", "%s is no distance from a side", yamlfile.Quoted(text))
	default:
		r.Fault(n, "write "+keys.Example("setback")+", or setback: centred", "%s is no distance from a side", yamlfile.Quoted(text))
	}
}

// besides lists the sides beside the one the bit enters, or all.
func besides(in joinery.Side) []string {
	var names []string
	for _, s := range joinery.Sides {
		if in == joinery.NoSide || s.Dimension() != in.Dimension() {
			names = append(names, s.String())
		}
	}
	return names
}
