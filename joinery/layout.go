package joinery

import (
	"fmt"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"
)

// layout is the laying-out of one cut on one piece: it gathers channels, and
// faults where the cut does not fit the piece.
type layout struct {
	piece    *Piece
	cut      *Cut
	scale    measure.Scale
	channels []Channel
	faults   plantext.Faults
}

// Lay turns the cut into channels on its piece and keeps them in Channels. The
// scale is for the lengths in messages. A cut with faults keeps no channels.
func (c *Cut) Lay(p *Piece, s measure.Scale) plantext.Faults {
	l := layout{piece: p, cut: c, scale: s}
	c.Kind.lay(&l)
	for _, channel := range l.channels {
		if len(l.faults) == 0 {
			l.checkInside(channel)
		}
	}
	for _, channel := range l.channels {
		if !l.checkFencing(channel) {
			break // the same is wrong with the others
		}
	}
	c.Channels = nil
	if len(l.faults) == 0 {
		c.Channels = l.channels
	}
	return l.faults
}

// LayAll lays every cut of the piece.
func (p *Piece) LayAll(s measure.Scale) plantext.Faults {
	var faults plantext.Faults
	for i := range p.Cuts {
		faults = append(faults, p.Cuts[i].Lay(p, s)...)
	}
	return faults
}

// fault adds a fault at the first of the keys that was written.
func (l *layout) fault(remedy string, keys []string, problem string, args ...any) {
	l.faults.Add(plantext.Fault{
		Place:   l.cut.Places.At(l.cut.Place, keys...),
		Problem: fmt.Sprintf("%s %q in %q: ", l.cut.Kind, l.cut.Name, l.piece.Name) + fmt.Sprintf(problem, args...),
		Remedy:  remedy,
	})
}

// text is a length with its unit, for messages.
func (l *layout) text(length measure.Length) string {
	return l.scale.Format(length) + " " + l.scale.Unit.String()
}

// crosswise reports whether side lies across the piece from neither in nor its
// opposite, and faults the key where it does.
func (l *layout) crosswise(key string, side, in Side) bool {
	if side == NoSide || in == NoSide {
		return false
	}
	if side.Dimension() != in.Dimension() {
		return true
	}
	relation := "the side the bit enters"
	if side != in {
		relation = "opposite the side the bit enters"
	}
	l.fault("name one of the sides beside it: "+besides(in), []string{key}, "%s names the %s, %s", key, side, relation)
	return false
}

// besides lists the four sides that meet a side.
func besides(side Side) string {
	var names []string
	for _, s := range Sides {
		if s.Dimension() != side.Dimension() {
			names = append(names, s.String())
		}
	}
	return strings.Join(names, ", ")
}

// deep checks a depth from a side into the wood.
func (l *layout) deep(key string, depth measure.Length, in Side) bool {
	thick := l.piece.Size.Between(in)
	switch {
	case depth <= 0:
		l.fault("give a depth above 0", []string{key}, "the depth is 0")
	case depth > thick:
		l.fault("the depth can be "+l.text(thick)+" at the most"+l.orMetric(depth, thick), []string{key},
			"%s deep from the %s, but the piece measures %s %s", l.text(depth), in, l.text(thick), in.Dimension())
	default:
		return true
	}
	return false
}

// orMetric asks whether a whole number of inches that does not fit was meant in
// millimetres, where that would fit.
func (l *layout) orMetric(length, most measure.Length) string {
	number := length / measure.Inch
	if l.scale.Unit != measure.Inches || length%measure.Inch != 0 || number*measure.Millimetre > most {
		return ""
	}
	return fmt.Sprintf("; if millimetres are meant, write %d mm", number)
}

// wide checks a channel's walls against the piece.
func (l *layout) wide(key string, setback, width measure.Length, from Side) bool {
	across := l.piece.Size.Between(from)
	switch {
	case width <= 0:
		l.fault("give a "+key+" above 0", []string{key}, "the %s is 0", key)
	case width > across:
		l.fault(fmt.Sprintf("the %s can be %s at the most, the whole piece %s%s", key, l.text(across), from.Dimension(), l.orMetric(width, across)),
			[]string{key}, "a %s of %s is more than the piece has", key, l.text(width))
	case setback+width > across:
		l.fault(fmt.Sprintf("the setback can be %s at the most: the piece measures %s %s", l.text(across-width), l.text(across), from.Dimension()), []string{"setback"},
			"%s from the %s plus %s of %s ends %s outside the piece",
			l.text(setback), from, l.text(width), key, l.text(setback+width-across))
	default:
		return true
	}
	return false
}

// reach returns where the span lies on its dimension, from the low side.
func (l *layout) reach(run Dimension) (lo, hi measure.Length, ok bool) {
	span, size := l.cut.Span, l.piece.Size[run]
	if span.Whole() {
		return 0, size, true
	}
	if span.Side.Dimension() != run {
		l.fault(fmt.Sprintf("measure the span from the %s or the %s", run.Low(), run.High()), []string{"span"},
			"the span is measured from the %s, but the cut runs %s", span.Side, run)
		return 0, 0, false
	}
	switch {
	case span.From == span.To:
		l.fault("write the line it begins at, then the line it ends at", []string{"span"}, "the span begins and ends at %s", l.text(span.From))
		return 0, 0, false
	case span.From > span.To:
		l.fault(fmt.Sprintf("write the nearer line first: %s to %s from %s", l.scale.Format(span.To), l.scale.Format(span.From), span.Side), []string{"span"},
			"the span begins at %s and ends at %s", l.text(span.From), l.text(span.To))
		return 0, 0, false
	case span.To > size:
		l.fault("the span can end at "+l.text(size)+" at the most", []string{"span"},
			"the span ends %s outside the piece, which measures %s %s", l.text(span.To-size), l.text(size), run)
		return 0, 0, false
	}
	if span.Side.High() {
		return size - span.To, size - span.From, true
	}
	return span.From, span.To, true
}

// checkInside faults a channel that is none, or that lies outside the piece,
// whatever its kind made of the maker's numbers.
func (l *layout) checkInside(c Channel) {
	size := l.piece.Size
	if c.Down == NoSide || c.Near == NoSide || c.Down.Dimension() == c.Near.Dimension() {
		l.fault("name two sides that meet", []string{"in", "at", "along", "on"}, "it does not say from which side it is entered, and which one beside that its walls are measured from")
		return
	}
	run := c.Run()
	deep, across, long := size.Between(c.Down), size.Between(c.Near), size[run]
	inside := func(most measure.Length, d Dimension) string {
		return "keep it inside the piece, which measures " + l.text(most) + " " + d.String()
	}
	switch {
	case c.Depth <= 0:
		l.fault("give a depth above 0", []string{"depth"}, "nothing of it is cut: it has no depth")
	case c.Depth > deep:
		l.fault(inside(deep, c.Down.Dimension()), []string{"depth"}, "it would go %s deeper from the %s than the piece has wood", l.scale.Say(c.Depth-deep), c.Down)
	case c.Width <= 0:
		l.fault("give a width above 0", []string{"width", "length"}, "nothing of it is cut: it has no width")
	case c.Setback < 0:
		l.fault(inside(across, c.Near.Dimension()), []string{"setback", "width", "length"}, "it would begin %s outside the piece at the %s", l.scale.Say(-c.Setback), c.Near)
	case c.Setback+c.Width > across:
		l.fault(inside(across, c.Near.Dimension()), []string{"setback", "width", "length"}, "it would end %s outside the piece at the %s", l.scale.Say(c.Setback+c.Width-across), c.Near.Opposite())
	case c.Lo < 0:
		l.fault(inside(long, run), []string{"span"}, "it would run %s out of the piece at the %s", l.scale.Say(-c.Lo), run.Low())
	case c.Hi > long:
		l.fault(inside(long, run), []string{"span"}, "it would run %s out of the piece at the %s", l.scale.Say(c.Hi-long), run.High())
	case c.Lo >= c.Hi:
		l.fault("write the line it begins at, then the line it ends at", []string{"span"}, "nothing of it is cut: it begins where it ends")
	}
}

// checkFencing faults a fence wish that the channel cannot follow.
func (l *layout) checkFencing(c Channel) bool {
	wish := l.cut.Fence.Side
	if wish == NoSide || wish.Dimension() == c.Near.Dimension() {
		return true
	}
	why := "it is an end of the cut"
	if wish.Dimension() == c.Down.Dimension() {
		why = "the bit enters the " + c.Down.String()
	}
	l.fault(fmt.Sprintf("write fence: %s, fence: %s, or fence: either", c.Near, c.Near.Opposite()), []string{"fence"},
		"the %s cannot go to the fence: %s", wish, why)
	return false
}
