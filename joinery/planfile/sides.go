package planfile

import (
	"strings"

	"fencecard/joinery"
)

// longestPencilled is as much as a line of a card has room for, in characters.
const longestPencilled = 20

// readSides reads the names that are pencilled on a piece's sides.
func (r *planReader) readSides(f *fields) joinery.Pencilled {
	var called joinery.Pencilled
	if !f.has("sides") {
		return called
	}
	n := f.value("sides")
	if !r.mapping(n, "each side has its own name", "write "+example("sides")) {
		return called
	}
	sides := r.fields(n, "sides", sideNames())
	first := map[string]joinery.Side{} // by the name in lower case
	for _, s := range joinery.Sides {
		first[s.String()] = s
	}
	for _, s := range joinery.Sides {
		text, at, ok := sides.scalar(s.String())
		if !ok {
			continue
		}
		name := r.cleaned(at, "name", text, longestPencilled)
		other, taken := first[strings.ToLower(name)]
		switch {
		case name == "" || taken && other == s:
		case taken && strings.EqualFold(name, other.String()):
			r.fault(at, "take another word, such as "+s.String()+": outside", "the %s is called by the name of another side", s)
		case taken:
			r.add(joinery.Fault{
				Place:   r.place(at),
				Problem: "two sides are called " + quoted(name),
				Remedy:  "give each side a name of its own",
				Other:   r.place(sides.value(other.String())),
				Clash:   "the " + other.String(),
			})
		default:
			called[s], first[strings.ToLower(name)] = name, s
		}
	}
	return called
}
