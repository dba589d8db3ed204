package planfile

import (
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"
)

// longestPencilled is as much as a line of a card has room for, in characters.
const longestPencilled = 20

// readSides reads the names that are pencilled on a piece's sides.
func (r *planReader) readSides(f *yamlfile.Fields) joinery.Pencilled {
	var called joinery.Pencilled
	if !f.Has("sides") {
		return called
	}
	n := f.Value("sides")
	if !r.Mapping(n, "each side has its own name", "write "+keys.Example("sides")) {
		return called
	}
	sides := r.Fields(n, "sides", keys.SideNames())
	first := map[string]joinery.Side{} // by the name in lower case
	for _, s := range joinery.Sides {
		first[s.String()] = s
	}
	for _, s := range joinery.Sides {
		text, at, ok := sides.Scalar(s.String())
		if !ok {
			continue
		}
		name := r.Cleaned(at, "name", text, longestPencilled)
		other, taken := first[strings.ToLower(name)]
		switch {
		case name == "" || taken && other == s:
		case taken && strings.EqualFold(name, other.String()):
			r.Fault(at, "take another word, such as "+s.String()+": outside", "the %s is called by the name of another side", s)
		case taken:
			r.Add(plantext.Fault{
				Place:   r.Place(at),
				Problem: "two sides are called " + yamlfile.Quoted(name),
				Remedy:  "give each side a name of its own",
				Other:   r.Place(sides.Value(other.String())),
				Clash:   "the " + other.String(),
			})
		default:
			called[s], first[strings.ToLower(name)] = name, s
		}
	}
	return called
}
