package planfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// readSetback reads where the near wall is: "1/2 from front", "centred", or
// "centred from front".
func readSetback(f *fields, in joinery.Side) joinery.Setback {
	text, n, ok := f.scalar("setback")
	if !ok {
		return joinery.Setback{}
	}
	if side, ok := isCentred(text); ok {
		s := joinery.Setback{Centred: true}
		if side != "" {
			s.From = f.r.side(n, side)
		}
		return s
	}
	written, side, ok := fromSide(text)
	if !ok {
		badSetback(f.r, n, text, in)
		return joinery.Setback{}
	}
	distance, _ := f.r.length(n, written)
	return joinery.Setback{Distance: distance, From: f.r.side(n, side)}
}

// badSetback faults a text that is no distance from a side.
func badSetback(r *reader, n *yaml.Node, text string, in joinery.Side) {
	words := strings.Fields(text)
	last := joinery.NoSide
	if len(words) > 0 {
		last, _ = joinery.ParseSide(strings.ToLower(words[len(words)-1]))
	}
	switch {
	case r.isLength(text):
		r.fault(n, fmt.Sprintf("write setback: %s from %s", text, joinery.List(besides(in), "or")), "the setback does not say from which side")
	case last != joinery.NoSide && len(words) < 3:
		r.fault(n, fmt.Sprintf("write setback: 1/2 from %s, with your own distance", last), "the setback has no distance")
	case last != joinery.NoSide && r.isLength(strings.Join(words[:len(words)-2], " ")):
		r.fault(n, fmt.Sprintf("write setback: %s from %s", strings.Join(words[:len(words)-2], " "), last), "%s is no distance from a side", quoted(text))
	case joinery.Nearest(text, []string{"centred"}) != "" || slices.Contains(words, "middle"):
		r.fault(n, "write setback: centred", "%s is no distance from a side", quoted(text))
	default:
		r.fault(n, "write "+example("setback")+", or setback: centred", "%s is no distance from a side", quoted(text))
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
