package book

import (
	"math"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/setup/deck"
	"fencecard/setup/ladder"
)

// outlineText writes the corners of a drawn outline, from the pilot down: "3/8 in
// at 0 in, 1 in at 1/4 in", how far beyond the pilot and at what height below it.
func outlineText(o *joinery.Outline, s speller) string {
	var words []string
	for _, c := range o.Corners {
		words = append(words, s.Spell(c.Reach)+" at "+s.Spell(c.Below))
	}
	return strings.Join(words, ", ")
}

// outline reads the form of a bit that shapes edges, nil for another.
func (g *group) outline(bit *joinery.Bit) *joinery.Outline {
	shape, ok := bit.Kind.Shape()
	if !ok {
		return nil
	}
	before := g.faults.count
	bit.Pilot = g.needLength(keyPilot, "1/2 in", 1)
	o := &joinery.Outline{Shape: shape}
	if shape == joinery.Drawn {
		o.Corners = g.corners()
	} else {
		o.Radius = g.needLength(keyRadius, "1/4 in", 1)
	}
	if f, ok := g.one(keyDiameter); ok && g.faults.count == before && bit.True() != o.Across(bit.Pilot) {
		g.fault(f, "the pilot and the reach on each side make the diameter", "diameter, pilot and outline do not fit each other")
	}
	if g.faults.count > before {
		return nil
	}
	return o
}

func (g *group) corners() []joinery.Corner {
	const example = "3/8 in at 0 in, 1 in at 1/4 in"
	f, ok := g.need(keyOutline, example)
	if !ok {
		return nil
	}
	var corners []joinery.Corner
	last := measure.Length(-1)
	for word := range strings.SplitSeq(f.value, ",") {
		reach, below, ok := strings.Cut(word, " at ")
		c := joinery.Corner{}
		if ok {
			c.Reach, ok = g.parse(f, strings.TrimSpace(reach))
		}
		if ok {
			c.Below, ok = g.parse(f, strings.TrimSpace(below))
		}
		if !ok || c.Reach < 0 || c.Below <= last || len(corners) == 0 && c.Below != 0 || len(corners) == joinery.MostCorners {
			g.fault(f, "write "+example+": how far beyond the pilot, and how far below it, from the pilot down", "the outline cannot be read")
			return nil
		}
		corners, last = append(corners, c), c.Below
	}
	if o := (joinery.Outline{Shape: joinery.Drawn, Corners: corners}); len(corners) < 2 || o.Wide() == 0 {
		g.fault(f, "write "+example, "this outline shapes nothing")
	}
	return corners
}

// shaped fills in how the bit shapes a channel, from where its fence stands in the
// last of its runs.
func (g *group) shaped(kind *joinery.Kind, step *deck.Step, ch *joinery.Channel) {
	o := step.Bit.Outline
	if kind == nil || kind.Shapes != (o != nil) {
		f, _ := g.one(keyKind)
		g.fault(f, "correct the kind of the cut or that of the bit", "a %s bit does not make such a cut", step.Bit.Kind)
		return
	}
	if o == nil {
		return
	}
	last := *step
	if f, ok := g.one(keyAtLast); ok {
		last.NearEdge, _ = g.parse(f, f.value)
	}
	if f, ok := g.one(keyBefore); ok {
		step.Before, _ = g.parse(f, f.value)
	}
	ch.Section.Outline = o
	ch.Section = deck.SectionAt(last, *ch)
	ch.Width = measure.FromMillimetres(ch.Section.Widest(ch.Depth))
	if ch.Section.Forward < 0 || ch.Width == 0 {
		g.fault(g.head, "check the fence, pilot, depth and outline", "the bit would not shape the edge of %q", g.head.value)
	}
}

// recessText writes a recess: "3/8 in deep, 1/2 in wide, 1/16 in beyond".
func recessText(r joinery.Recess, s speller) string {
	if r.Depth == 0 {
		return ""
	}
	return s.Spell(r.Depth) + " deep, " + s.Spell(r.Width) + " wide, " + s.Spell(r.Beyond) + " beyond"
}

var recessLine = pattern.New(`^(.*\S)\s+deep\s*,\s*(.*\S)\s+wide\s*,\s*(.*\S)\s+beyond$`)

// recess reads the recess that a channel lies in.
func (g *group) recess(ch *joinery.Channel) {
	f, ok := g.one(keyRecess)
	if !ok {
		return
	}
	m := recessLine.FindStringSubmatch(f.value)
	if m == nil {
		g.fault(f, "write 3/8 in deep, 1/2 in wide, 1/16 in beyond", "the recess cannot be read")
		return
	}
	r := &ch.Recess
	for i, l := range []*measure.Length{&r.Depth, &r.Width, &r.Beyond} {
		*l, _ = g.parse(f, m[i+1])
	}
	if r.Depth <= 0 || r.Depth >= ch.Depth || r.Width < ch.Width || r.Beyond < 0 {
		g.fault(f, "the recess is wider, longer and less deep than what goes on from it", "there is no such recess over this cut")
	}
}

// over is the channel that a recess is.
func over(ch joinery.Channel) joinery.Channel {
	r := ch.Recess
	return joinery.Channel{Part: "recess", Down: ch.Down, Near: ch.Near, Setback: ch.Setback - (r.Width-ch.Width)/2,
		Width: r.Width, Depth: r.Depth, Lo: ch.Lo - r.Beyond, Hi: ch.Hi + r.Beyond}
}

// Areas are written to a millionth.
const millionths = 1e6

// areaText writes the most wood of one pass: "0.032 sq in".
func areaText(area measure.Length, s speller) string {
	number, unit := area.Millimetres(), " mm2"
	if s.Unit == measure.Inches {
		number, unit = number/(measure.Inch.Millimetres()*measure.Inch.Millimetres()), " sq in"
	}
	return strconv.FormatFloat(math.Round(number*millionths)/millionths, 'f', -1, 64) + unit
}

// area reads what areaText writes; false for a text that is no area.
func area(text string) (measure.Length, bool) {
	number, inches := strings.CutSuffix(text, " sq in")
	number, metric := strings.CutSuffix(number, " mm2")
	n, err := strconv.ParseFloat(number, 64)
	if inches {
		n *= measure.Inch.Millimetres() * measure.Inch.Millimetres()
	}
	if !inches && !metric || err != nil || !(n > 0 && n < millionths) {
		return 0, false
	}
	return measure.Strip(n), true
}

// capText writes the most that one pass takes and its rule.
func capText(c ladder.Cap, shaped bool, s speller) string {
	if c.Depth == 0 {
		return ""
	}
	most := s.Spell(c.Depth)
	if shaped {
		most = areaText(c.Depth, s)
	}
	return strings.TrimSuffix(most+", "+clean(c.Rule), ", ")
}
