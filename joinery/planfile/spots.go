package planfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// spotRef is an end or a side of a piece as a joint names it, and where.
type spotRef struct {
	joint.Spot
	b  *blank
	at plantext.Place
}

// readSpots reads "PIECE / SIDE", several with commas or in a list; what follows
// in short, "PIECE / left, right", is of the same piece. Where no side is
// needed, the name of a piece will do. The ends that go into them tell which sides
// are likely meant.
func (r *planReader) readSpots(f *yamlfile.Fields, key string, sided bool, ends []spotRef) []spotRef {
	var spots []spotRef
	last := ""
	for _, n := range f.OneOrMore(key) {
		for _, item := range r.spotItems(n.Value) {
			if name, side, ok := r.spotNamed(n, key, item, &last, sided, facingSide(ends, len(spots))); ok {
				if ref, found := r.spot(n, item, name, side); found {
					spots = append(spots, ref)
				}
			}
		}
	}
	return spots
}

// spotItems splits a list at its commas, but not inside the name of a piece.
func (r *planReader) spotItems(text string) []string {
	var items []string
	pending := ""
	for _, part := range strings.Split(text, ",") {
		pending = strings.TrimSpace(pending + part)
		_, piece := r.named[pending]
		_, side := joinery.ParseSide(strings.ToLower(pending))
		if piece || side || strings.Contains(pending, "/") {
			items, pending = append(items, pending), ""
			continue
		}
		pending += ", "
	}
	if pending = strings.TrimSuffix(pending, ", "); pending != "" {
		items = append(items, pending)
	}
	return items
}

// spotNamed takes an item apart.
func (r *planReader) spotNamed(n *yaml.Node, key, item string, last *string, sided bool, meets joinery.Side) (name string, side joinery.Side, ok bool) {
	if s, bare := joinery.ParseSide(strings.ToLower(item)); bare && *last != "" {
		return *last, s, true
	}
	at := strings.LastIndex(item, "/")
	if at < 0 {
		if !sided {
			return yamlfile.OneLine(item), joinery.NoSide, true
		}
		if near := plantext.Nearest(strings.ToLower(item), keys.SideNames()); near != "" && *last != "" {
			r.Choice(yamlfile.Inside(r.Place(n), item), "side", item, keys.SideNames()...)
			return "", joinery.NoSide, false
		}
		remedy := fmt.Sprintf("write %s: %s / %s, with the end or side that is meant", key, yamlfile.Short(item), meets)
		if _, known := r.named[yamlfile.OneLine(item)]; !known {
			remedy = "write a piece and a side of it, such as " + key + ": front left leg / right"
		}
		r.Add(plantext.Fault{Place: yamlfile.Inside(r.Place(n), item), Problem: yamlfile.Quoted(item) + " does not say which side", Remedy: remedy})
		return "", joinery.NoSide, false
	}
	name = yamlfile.OneLine(item[:at])
	word := strings.TrimSpace(item[at+1:])
	word = strings.TrimSuffix(strings.TrimSuffix(word, " end"), " side")
	before := len(r.Faults)
	side = r.Side(n, word)
	if len(r.Faults) > before {
		return "", joinery.NoSide, false
	}
	*last = name
	return name, side, true
}

// spot finds the piece that is meant.
func (r *planReader) spot(n *yaml.Node, item, name string, side joinery.Side) (spotRef, bool) {
	at := yamlfile.Inside(r.Place(n), item)
	b, ok := r.named[name]
	switch {
	case !ok && r.nameless:
	case !ok:
		r.Add(plantext.Fault{Place: at, Problem: "there is no piece named " + yamlfile.Quoted(name), Remedy: r.nearPiece(name, nil)})
	case b.related:
		return spotRef{joint.Spot{Piece: b.Piece, Side: side}, b, at}, true
	}
	return spotRef{}, false
}

// facingSide is the side that an end faces, for the remedy of one that is not named.
func facingSide(ends []spotRef, number int) joinery.Side {
	if number < len(ends) && ends[number].Side != joinery.NoSide {
		return ends[number].Side.Opposite()
	}
	return joinery.Left
}
