package planfile

import (
	"fmt"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"

	"go.yaml.in/yaml/v4"
)

var movesText = pattern.New(`(?i)^(?:the\s+)?seasons?\s+(?:of|over)\s+(.+?)(?:\s+of\s+(\pL.*))?$`)

// readSlot reads what a slot for a screw has besides the keys of every cut.
func (r *planReader) readSlot(f *fields, in joinery.Side) *joinery.ScrewSlot {
	before := len(r.faults)
	s := joinery.ScrewSlot{Centre: r.readCentre(f, in)}
	if text, n, ok := f.scalar("along"); ok {
		s.Along, _ = r.dimension(n, text)
	}
	s.Screw, s.Head, s.HeadDepth = f.positive("screw"), f.positive("head"), f.positive("head depth")
	s.Move = r.readMove(f)
	if len(r.faults) > before {
		return nil
	}
	return &s
}

// readCentre reads where the centre of a slot is: "4 from left, 3/4 from front",
// or a list of the two, either of which may be "centred".
func (r *planReader) readCentre(f *fields, in joinery.Side) [2]joinery.Setback {
	var centre [2]joinery.Setback
	var lines []string
	nodes := f.oneOrMore("at")
	for _, n := range nodes {
		lines = append(lines, strings.Split(n.Value, ",")...)
	}
	if len(nodes) == 0 {
		return centre
	}
	if len(lines) != len(centre) {
		r.fault(nodes[0], "write "+f.example("at")+", with your own figures", "at says where the centre of the slot is, from two sides that meet")
		return centre
	}
	for i, text := range lines {
		n, text := nodes[min(i, len(nodes)-1)], strings.TrimSpace(text)
		if m := centredText.FindStringSubmatch(text); m != nil {
			centre[i] = joinery.Setback{Centred: true}
			continue
		}
		m := setbackText.FindStringSubmatch(text)
		if m == nil {
			r.fault(n, "write "+f.example("at")+", or centred for one of the two", "%s is no distance from a side", quoted(text))
			continue
		}
		distance, _ := r.length(n, m[1])
		centre[i] = joinery.Setback{Distance: distance, From: r.side(n, m[2])}
	}
	return centre
}

// secondLine faults the second distance of a slot's centre in braces, where it is
// taken for a key.
func (f *fields) secondLine(key, value *yaml.Node) bool {
	if !f.knows("screw") || !null(value) || f.node.Style&yaml.FlowStyle == 0 || !setbackText.MatchString(key.Value) && !centredText.MatchString(key.Value) {
		return false
	}
	first := "4 from left"
	if n := f.value("at"); n != nil && n.Kind == yaml.ScalarNode {
		first = short(n.Value)
	}
	f.r.fault(key, fmt.Sprintf("put brackets round the two, at: [%s, %s]", first, short(key.Value)), "inside braces a comma begins a new key")
	f.forget("at")
	f.meant = append(f.meant, "at")
	return true
}

// readMove reads how far a screw moves: "seasons of 10", from the fixed line,
// "seasons of 10 of black cherry", or the whole movement as a length.
func (r *planReader) readMove(f *fields) joinery.ScrewMove {
	text, n, ok := f.scalar("move")
	if !ok {
		return joinery.ScrewMove{}
	}
	if m := movesText.FindStringSubmatch(text); m != nil {
		move := joinery.ScrewMove{Climate: r.plan.Climate}
		move.From, ok = r.length(n, m[1])
		if ok && move.From == 0 {
			r.fault(n, "write how far the screw is from the line on which the board is fixed, such as "+f.example("move"), "on the fixed line nothing moves: that screw needs no slot")
		}
		if m[2] != "" {
			wood := r.woodNamed(n, strings.TrimSpace(m[2]), joinery.Wood{})
			move.Board = &wood
		}
		return move
	}
	if strings.Contains(strings.ToLower(text), "season") {
		r.fault(n, "write "+f.example("move")+", with your own distance", "%s does not say how far the screw is from the line on which the board is fixed", quoted(text))
		return joinery.ScrewMove{}
	}
	whole := f.positive("move")
	return joinery.ScrewMove{Whole: whole}
}

// wettest is more water than wood holds that still shrinks with the seasons.
const wettest = 30

// moisture reads a moisture content in percent; 0 where it was not written.
func (f *fields) moisture(key string) float64 {
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	value, ok := figure(strings.TrimSpace(strings.TrimSuffix(text, "%")))
	if !ok || value <= 0 || value > wettest {
		f.r.fault(n, "write the moisture that a meter shows in the wood when the work is put together, above 0 and up to "+strconv.Itoa(wettest)+", such as "+example(key),
			"%s is no moisture content of wood", quoted(text))
		return 0
	}
	return value
}
