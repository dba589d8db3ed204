package shopfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// likely is how large one measure of a shop can be; another was likely typed in
// the other unit, or with a slip of the finger.
type likely struct {
	least, most measure.Length
	nought      bool   // 0 says that there is none
	no          string // what there is none of, with its measure
}

// likelies are the measures by their keys (common practice, no source): wide
// enough for any table, and too narrow for most numbers of the other unit.
var likelies = map[string]likely{
	"infeed":         {least: measure.Inch, most: 120 * measure.Inch, no: "no fence ends %s from the bit"},
	"outfeed":        {least: measure.Inch, most: 120 * measure.Inch, no: "no fence ends %s from the bit"},
	"reach":          {least: measure.Inch / 2, most: 60 * measure.Inch, no: "no fence reaches just %s from the bit"},
	"lift":           {least: 10 * measure.Millimetre, most: 12 * measure.Inch, no: "no table lifts a bit by %s"},
	"base":           {least: 2 * measure.Inch, most: 24 * measure.Inch, no: "no router has a base %s wide"},
	"cheek":          {most: measure.Inch / 8, nought: true, no: "no joint with %s of room at its cheeks holds"},
	"length":         {most: measure.Inch, nought: true, no: "no tenon is %s shorter than its mortise is deep"},
	"shortest-piece": {least: measure.Inch, most: 120 * measure.Inch, no: "no rule for short pieces begins at %s"},
	"hand-distance":  {least: measure.Inch / 2, most: 60 * measure.Inch, no: "no hand is kept %s from a bit"},
	"thinnest-floor": {most: 2 * measure.Inch, nought: true, no: "no floor of %s is too thin"},
	"shank":          {least: 2 * measure.Millimetre, most: measure.Inch, no: "no router takes a shank of %s"},
	"cutting":        {least: measure.Millimetre, most: 6 * measure.Inch, no: "no bit has %s of cutting edge"},
	"cap":            {least: measure.Millimetre / 4, most: 2 * measure.Inch, no: "no pass is %s deep"},
}

// checkUnit is the remedy where a number was likely typed in the other unit.
const checkUnit = "check the number and its unit; millimetres are written 8 mm, inches 3/8 in"

// likely reads a measure of a shop, and doubts one that no shop has.
func (r *shopReader) likely(f *yamlfile.Fields, key string) measure.Length {
	is := likelies[key]
	read := (*yamlfile.Fields).Positive
	if is.nought {
		read = (*yamlfile.Fields).Length
	}
	before := len(r.Faults)
	l := read(f, key)
	if f.Value(key) != nil && len(r.Faults) == before && (l < is.least || l > is.most) {
		r.doubt(f.Value(key), is.no, l)
	}
	return l
}

// doubt remembers what looks mistyped until the whole shop was read: where its
// unit is wrong, that is said once in place of all its numbers.
func (r *shopReader) doubt(n *yaml.Node, no string, l measure.Length) {
	if len(r.doubts) > yamlfile.MostFaults {
		return
	}
	r.doubts.Add(plantext.Fault{Place: r.Place(n), Problem: fmt.Sprintf(no, measure.DefaultScale(r.Unit).Spell(l)), Remedy: checkUnit})
}

// Beside what any bit has, its cutting edge agrees with its diameter: 25 typed
// for millimetres is 25 in, and 1 1/2 typed for inches 1.5 mm.
const (
	mostEdges  = 16 // times its diameter
	leastShare = 8  // of its diameter
	leastEdge  = 5 * measure.Millimetre / 2
)

// doubtCutting doubts a cutting edge that a bit of the diameter does not have.
func (r *shopReader) doubtCutting(f *yamlfile.Fields, bit joinery.Bit) {
	edge, d := bit.Cutting, bit.Diameter
	if edge == 0 || d == 0 || edge < likelies["cutting"].least || edge > likelies["cutting"].most {
		return
	}
	spell := measure.DefaultScale(r.Unit).Spell
	no := "no bit " + strings.ReplaceAll(spell(d), "%", "%%") + " wide has %s of cutting edge"
	if edge > mostEdges*d || leastShare*edge < d || edge < leastEdge && edge < d {
		r.doubt(f.Value("cutting"), no, edge)
	}
}

// settle faults what was doubted, unless the shop as a whole is in the wrong
// unit, which was faulted already.
func (r *shopReader) settle(wholly bool) {
	if !wholly {
		for _, f := range r.doubts {
			r.Add(f)
		}
	}
	r.doubts = nil
}
