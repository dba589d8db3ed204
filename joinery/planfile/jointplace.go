package planfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

var insetText = pattern.New(`(?i)^(.+?)\s+(\S+)$`)

// readPlace reads how the entering piece lies: "centred", or sides with "flush",
// "1/8 back", "1/8 proud".
func (r *planReader) readPlace(j *jointWish) joint.Place {
	var place joint.Place
	if !j.f.Written("place") || !j.f.Has("place") {
		return place
	}
	n := j.f.Value("place")
	if _, centred := yamlfile.IsCentred(strings.TrimSpace(n.Value)); centred && n.Kind == yaml.ScalarNode {
		place.Centred = [3]bool{true, true, true}
		return place
	}
	if !r.Mapping(n, "place says of two like-named sides how they lie, each after its key", "write "+keys.Example("place")+", or place: centred") {
		return place
	}
	f := r.Fields(n, "place", keys.Place)
	for _, s := range joinery.Sides {
		text, at, ok := f.Scalar(s.String())
		if !ok {
			continue
		}
		j.nodes["place "+s.String()] = at
		if by, ok := r.inset(at, s, text); ok {
			place.Sides = append(place.Sides, joint.Inset{Side: s, By: by})
		}
	}
	for _, at := range f.OneOrMore("centred") {
		j.nodes["place centred"] = at
		if d, ok := r.Dimension(at, strings.TrimSpace(at.Value)); ok {
			place.Centred[d] = true
		}
	}
	if len(n.Content) == 0 {
		r.Fault(n, "write "+keys.Example("place"), "place names no side")
	}
	return place
}

// inset reads how far inside the like-named side a side lies.
func (r *planReader) inset(n *yaml.Node, side joinery.Side, text string) (measure.Length, bool) {
	if strings.EqualFold(text, "flush") {
		return 0, true
	}
	inward, outward := joint.Inward(side), joint.Inward(side.Opposite())
	offer := fmt.Sprintf("write %s: flush, %s: 1/8 %s or %s: 1/8 proud", side, side, inward, side)
	m := insetText.FindStringSubmatch(text)
	if m == nil || !r.IsLength(m[1]) {
		if r.IsLength(text) {
			r.Fault(n, fmt.Sprintf("write %s: %s %s, or %s: %s proud", side, text, inward, side, text), "%s does not say which way from flush", yamlfile.Quoted(text))
			return 0, false
		}
		if m != nil && slices.Contains([]string{inward, outward, "proud"}, strings.ToLower(m[2])) {
			r.Length(n, m[1])
			return 0, false
		}
		if near := plantext.Nearest(text, []string{"flush"}); near != "" {
			offer = "write " + side.String() + ": flush"
		}
		r.Fault(n, offer, "%s is no way to lie", yamlfile.Quoted(text))
		return 0, false
	}
	by, _ := r.Length(n, m[1])
	switch word := strings.ToLower(m[2]); word {
	case inward:
		return by, true
	case "proud":
		return -by, true
	case outward:
		r.Add(plantext.Fault{Place: yamlfile.Inside(r.Place(n), m[2]),
			Problem: fmt.Sprintf("at the %s, %s is the way out of the other piece", side, word),
			Remedy:  fmt.Sprintf("write %s: %s proud if it stands out, %s: %s %s if it stands back", side, m[1], side, m[1], inward)})
	default:
		words := []string{inward, "proud"}
		remedy := fmt.Sprintf("write %s: %s %s, or %s: %s proud", side, m[1], inward, side, m[1])
		if near := plantext.Nearest(word, words); near != "" {
			remedy = fmt.Sprintf("write %s: %s %s", side, m[1], near)
		}
		r.Add(plantext.Fault{Place: yamlfile.Inside(r.Place(n), m[2]), Problem: fmt.Sprintf("%s is no way from the %s", yamlfile.Quoted(m[2]), side), Remedy: remedy})
	}
	return 0, false
}

// repeatPlace makes one place for each of a repeat, which says where the entering
// pieces lie in one of the two directions.
func (r *planReader) repeatPlace(j *jointWish, place joint.Place) {
	if j.repeat == nil {
		return
	}
	d := j.repeat.from.Dimension()
	said := place.Centred[d] && j.nodes["place centred"] != nil
	for _, s := range place.Sides {
		said = said || s.Side.Dimension() == d
	}
	if said {
		r.Fault(j.f.Value("repeat"), fmt.Sprintf("take %s out of place, or out of repeat", d), "place and repeat both say how the pieces lie %s", d)
		return
	}
	place.Centred[d] = false
	for _, at := range j.repeat.at {
		one := place
		one.Sides = append(slices.Clone(place.Sides), joint.Inset{Side: j.repeat.from, By: at})
		j.places = append(j.places, one)
	}
}
