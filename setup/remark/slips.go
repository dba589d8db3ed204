package remark

import (
	"fmt"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
	"fencecard/setup/remark/trade"
	"fencecard/setup/solid"
)

// slips are what a maker may well mean and is more likely to have mistyped:
// each is a question. They are told before the conditions of the same cut.
var slips = []condition{
	{"unit-doubt", "A size or cut looks as if typed in the other unit.",
		trade.CommonPractice, findUnitDoubt},
	{"grain-doubt", "The grain runs the shortest way through a piece.",
		trade.CommonPractice, findGrainDoubt},
	{"same-mirror", "A mirror image is the same piece again.",
		"worked out from the mirror", findSameMirror},
	{"wide-mortise", "A mortise is wider than long, or wide for its stock.",
		"a third of the stock: Handwork in Wood, ch. VII; half of it is allowed for here", findWideMortise},
	{"far-setback", "A setback is measured from the farther side.",
		"gauge from the nearer face: " + trade.CommonPractice, findFarSetback},
	{"crossed-grain", "A dado runs with the grain, or a groove across it.",
		"a dado across the grain, a groove with it: Handwork in Wood, ch. VII", findCrossedGrain},
}

// doubts reports whether furniture is hardly made of a piece of that size.
func (is stock) doubts(size joinery.Size) bool {
	least, most := slices.Min(size[:]), slices.Max(size[:])
	return is.longest > 0 && most > is.longest || is.thickest > 0 && least > is.thickest || most < is.shortest || least < is.thinnest
}

// WrongUnit is the one fault of a plan that is written in the other unit as a
// whole: no bit makes its cuts, and every piece with such a cut is in doubt.
func WrongUnit(plan *joinery.Plan, stopped []*joinery.Piece) (plantext.Fault, bool) {
	is := stocks[plan.Unit]
	for _, p := range stopped {
		if !is.doubts(p.Size) {
			return plantext.Fault{}, false
		}
	}
	if len(stopped) == 0 {
		return plantext.Fault{}, false
	}
	first, spell := stopped[0], measure.DefaultScale(plan.Unit).Spell
	return plantext.Fault{
		Place: first.Places.At(first.Place, "size"),
		Problem: fmt.Sprintf("%q is %s by %s by %s, and no bit of the shop makes its cuts",
			first.Name, spell(first.Size[0]), spell(first.Size[1]), spell(first.Size[2])),
		Remedy: fmt.Sprintf("write unit: %s if %s are meant", is.other, unitWords[is.other]),
	}, true
}

var unitWords = map[measure.Unit]string{measure.Inches: "inches", measure.Millimetres: "millimetres"}

// findUnitDoubt looks for sizes, depths and setbacks that were likely typed in
// the other unit.
func findUnitDoubt(w *work) []finding {
	is := stocks[w.unit]
	size := w.piece.Size
	spell := measure.DefaultScale(w.unit).Spell
	if is.doubts(size) {
		return []finding{{nil, fmt.Sprintf("a piece of %s by %s by %s: are these %s? Write unit: %s for the whole plan, or %s behind each length",
			spell(size[0]), spell(size[1]), spell(size[2]), unitWords[is.other], is.other, is.other), []string{"size"}}}
	}
	var found []finding
	for _, m := range w.cuts {
		if m.cut.Span.Bare {
			found = append(found, finding{m.cut, fmt.Sprintf("the span of the %s begins at %s, since a number without a unit is in %s: is that meant? Write a unit behind both lines",
				m.words(), spell(m.cut.Span.From), unitWords[w.unit]), []string{"span"}})
		}
		c := m.channel
		key, l := "depth", c.Depth
		if c.Depth >= is.shallowest {
			key, l = "setback", c.Setback
		}
		if key == "depth" || c.Setback > 0 && c.Setback < is.nearest {
			found = append(found, finding{m.cut, fmt.Sprintf("the %s has a %s of only %s: is it in %s? Write %s behind it",
				m.words(), key, spell(l), unitWords[is.other], is.other), []string{key}})
		}
	}
	return found
}

// findGrainDoubt looks for grain along the shortest way through a piece.
func findGrainDoubt(w *work) []finding {
	size, grain := w.piece.Size, w.piece.Grain
	least, most := slices.Min(size[:]), slices.Max(size[:])
	if w.grainless() || size[grain] > least || least == most {
		return nil
	}
	long := joinery.Dimensions[slices.Index(size[:], most)]
	return []finding{{nil, fmt.Sprintf("the grain runs %s, the shortest way through the piece: is it grain: %s?", grain, long), []string{"grain", "size"}}}
}

// grainless reports whether the piece has no grain to speak of.
func (w *work) grainless() bool { return w.piece.Wood.Group == timber.Sheet }

// findSameMirror looks for mirrors that come out like the piece they mirror. Where
// there are no cuts yet, nothing can tell them apart; where one is joined to others,
// the mirror says where it stands, and its joint follows from that.
func findSameMirror(w *work) []finding {
	if w.source == nil || w.joined || len(w.piece.Cuts) == 0 || w.source.Wood.Name != w.piece.Wood.Name || !sameCuts(w.source, w.piece) {
		return nil
	}
	return []finding{{nil, fmt.Sprintf("the mirror image of %q is the same piece again: is that the dimension it should be mirrored across? If the two are alike, write count instead of mirror",
		w.source.Name), []string{"mirror"}}}
}

// sameCuts reports whether two pieces of one size have the same room taken out
// from the same sides, whatever side it is measured from.
func sameCuts(a, b *joinery.Piece) bool {
	type taken struct {
		down joinery.Side
		box  solid.Box
	}
	all := func(p *joinery.Piece) map[taken]int {
		count := map[taken]int{}
		for i := range p.Cuts {
			for _, ch := range p.Cuts[i].Channels {
				count[taken{ch.Down, solid.Of(ch, p.Size, 0).Box(p.Size)}]++
			}
		}
		return count
	}
	first, second := all(a), all(b)
	for t, n := range first {
		if second[t] != n {
			return false
		}
	}
	return len(first) == len(second)
}

// findWideMortise looks for mortises wider than half the stock, or wider than
// they are long.
func findWideMortise(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		c := m.channel
		across, long := w.piece.Size.Between(c.Near), c.Hi-c.Lo
		switch {
		case !m.cut.Kind.Encloses:
		case c.Width > long:
			found = append(found, finding{m.cut, fmt.Sprintf("the %s is %s wide and only %s long: are width and span exchanged? The width is measured from the %s, the span along the mortise",
				m.words(), w.text(c.Width), w.text(long), c.Near), []string{"width", "span"}})
		case 2*c.Width > across && 2*c.Depth >= c.Width: // a shallower one is let in for a hinge or a plate
			found = append(found, finding{m.cut, fmt.Sprintf("the %s is %s wide in %s of stock: is that the width? A third, %s, is usual",
				m.words(), w.text(c.Width), w.text(across), w.text(w.scale.Round(across/3))), []string{"width"}})
		}
	}
	return found
}

// findFarSetback looks for mortises and grooves more than twice as far from the
// side they are measured from as from the other. Where another cut nearer to it
// is measured from that side too, it is the maker's face side and no slip; where
// they are open on the far side, that is told elsewhere.
func findFarSetback(w *work) []finding {
	var found []finding
	for _, m := range w.cuts {
		c := m.channel
		across, other := w.piece.Size.Between(c.Near), c.Near.Opposite()
		left := across - c.Setback - c.Width
		far := c.Setback > 2*left && left > 0
		if !m.cut.Kind.Gauged ||
			m.cut.Start.Centred || m.cut.Fence != (joinery.Fencing{}) || !far || w.gauged(m) {
			continue
		}
		found = append(found, finding{m.cut, fmt.Sprintf("the %s stands %s from the %s and so only %s from the %s: is that the side it is measured from? If it is, write it from the nearer one, setback: %s from %s",
			m.words(), w.text(c.Setback), c.Near, w.text(left), other, w.text(left), other), []string{"setback"}})
	}
	return found
}

// gauged reports whether another cut is measured from the same side and nearer
// to it.
func (w *work) gauged(m *made) bool {
	return slices.ContainsFunc(w.cuts, func(o *made) bool {
		return o.cut != m.cut && o.channel.Near == m.channel.Near && o.channel.Setback < m.channel.Setback
	})
}

// findCrossedGrain looks for grooves across the grain and dados along it. In
// end grain either word will do; grain in doubt is asked about once.
func findCrossedGrain(w *work) []finding {
	if w.grainless() || len(findGrainDoubt(w)) > 0 {
		return nil
	}
	var found []finding
	for _, m := range w.cuts {
		grain := w.piece.Grain
		along := m.channel.Run() == grain
		way := "across"
		if along {
			way = "with"
		}
		if k := m.cut.Kind; !k.Grained || k.Across != along || m.channel.Down.Dimension() == grain {
			continue
		}
		found = append(found, finding{m.cut, fmt.Sprintf("the %s runs %s the grain, which is %s: are its sides and the grain of the piece what you mean? %s the grain it is called a %s",
			m.words(), way, grain, capital(way), grained(!along)), []string{m.cut.Kind.Name, "in"}})
	}
	return found
}

// grained names the kinds of cut that run across the grain, or with it.
func grained(across bool) string {
	return joinery.KindsThat(func(k *joinery.Kind) bool { return k.Grained && k.Across == across })
}

func capital(word string) string { return string(word[0]-'a'+'A') + word[1:] }

// stock is what furniture is made of, in one unit; what lies outside was
// likely typed in the other one (common practice, no source).
type stock struct {
	longest, shortest   measure.Length // of a piece's longest dimension; 0: any
	thickest, thinnest  measure.Length // of its shortest
	shallowest, nearest measure.Length // depth and setback of a cut
	other               measure.Unit
}

var stocks = map[measure.Unit]stock{
	measure.Inches: {longest: 12 * measure.Foot, thickest: 6 * measure.Inch, other: measure.Millimetres},
	measure.Millimetres: {shortest: 50 * measure.Millimetre, thinnest: 2 * measure.Millimetre,
		shallowest: measure.Millimetre, nearest: measure.Millimetre, other: measure.Inches},
}
