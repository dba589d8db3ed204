package planfile

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"

	"go.yaml.in/yaml/v4"
)

var (
	setbackText = pattern.New(`(?i)^(.+?)\s+from\s+(?:the\s+)?(\S+)$`)
	centredText = pattern.New(`(?i)^(?:centred|centered|centre|center)(?:\s+from\s+(?:the\s+)?(\S+))?$`)
	spanText    = pattern.New(`(?i)^(?:from\s+)?(.+?)(?:\s+from\s+(?:the\s+)?(\S+))?\s+to\s+(.+?)\s+from\s+(?:the\s+)?(\S+)$`)
	wholeText   = pattern.New(`(?i)^(?:from\s+)?end to end$`)
)

// readSetback reads where the near wall is: "1/2 from front", "centred", or
// "centred from front".
func (r *planReader) readSetback(f *fields, in joinery.Side) joinery.Setback {
	text, n, ok := f.scalar("setback")
	if !ok {
		return joinery.Setback{}
	}
	if m := centredText.FindStringSubmatch(text); m != nil {
		s := joinery.Setback{Centred: true}
		if m[1] != "" {
			s.From = r.side(n, m[1])
		}
		return s
	}
	m := setbackText.FindStringSubmatch(text)
	if m == nil {
		r.badSetback(n, text, in)
		return joinery.Setback{}
	}
	distance, _ := r.length(n, m[1])
	return joinery.Setback{Distance: distance, From: r.side(n, m[2])}
}

// badSetback faults a text that is no distance from a side.
func (r *planReader) badSetback(n *yaml.Node, text string, in joinery.Side) {
	words := strings.Fields(text)
	last := joinery.NoSide
	if len(words) > 0 {
		last, _ = joinery.ParseSide(strings.ToLower(words[len(words)-1]))
	}
	switch {
	case r.isLength(text):
		r.fault(n, fmt.Sprintf("write setback: %s from %s", text, list(besides(in), "or")), "the setback does not say from which side")
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

func (r *reader) isLength(text string) bool {
	_, err := joinery.ParseLength(text, r.unit)
	return err == nil
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

// readSpan reads where a cut runs: "1/2 to 3 from top", or from both ends,
// "1/2 from top to 14 from bottom".
func (r *planReader) readSpan(f *fields, in joinery.Side, b *blank) joinery.Span {
	text, n, ok := f.scalar("span")
	if !ok || wholeText.MatchString(text) {
		return joinery.Span{}
	}
	m := spanText.FindStringSubmatch(text)
	if m == nil {
		r.badSpan(n, text, in)
		return joinery.Span{}
	}
	before := len(r.faults)
	from, _ := r.length(n, m[1])
	to, _ := r.length(n, m[3])
	last := r.side(n, m[4])
	first := last
	if m[2] != "" {
		first = r.side(n, m[2])
	}
	if len(r.faults) > before {
		return joinery.Span{}
	}
	if first == last {
		return joinery.Span{From: from, To: to, Side: first}
	}
	return r.fromBothEnds(n, b, joinery.Span{From: from, To: to, Side: first}, last)
}

var dashBetween = pattern.New(`\s*(?:\s-\s|–|—|\.\.+|…)\s*`)

// badSpan faults a text that is no span.
func (r *planReader) badSpan(n *yaml.Node, text string, in joinery.Side) {
	from, to, two := strings.Cut(text, " to ")
	one := setbackText.FindStringSubmatch(text)
	joined := dashBetween.ReplaceAllString(text, " to ")
	switch {
	case two && r.isLength(from) && r.isLength(to):
		r.fault(n, fmt.Sprintf("write span: %s from %s", text, list(besides(in), "or")), "the span does not say from which side")
	case spanText.MatchString(joined):
		r.fault(n, "write span: "+joined, "%s is no span", quoted(text))
	case one != nil && r.isLength(one[1]):
		r.fault(n, fmt.Sprintf("write both lines; if it begins at the %s, span: 0 to %s", one[2], text), "the span has only one line")
	default:
		r.fault(n, "write the two lines it runs between, such as "+example("span")+"; leave span out for a cut from end to end",
			"%s is no span", quoted(text))
	}
}

// fromBothEnds measures a span's far end from the same side as its near end.
func (r *planReader) fromBothEnds(n *yaml.Node, b *blank, span joinery.Span, last joinery.Side) joinery.Span {
	if last != span.Side.Opposite() {
		r.fault(n, fmt.Sprintf("measure both from the %s, or one from the %s", span.Side, span.Side.Opposite()),
			"a span cannot run from the %s to the %s", span.Side, last)
		return joinery.Span{}
	}
	if !b.sized {
		return joinery.Span{}
	}
	whole := b.Size.Between(span.Side)
	if span.From+span.To >= whole {
		r.fault(n, fmt.Sprintf("the piece measures %s %s %s; the two must leave something between them", r.scale.Format(whole), r.scale.Unit, span.Side.Dimension()),
			"the two ends of the span meet or pass each other")
		return joinery.Span{}
	}
	span.To = whole - span.To
	return span
}

// readAfter reads the cuts that this one must follow.
func (r *planReader) readAfter(f *fields, cut string, b *blank) []string {
	var names []string
	seen := map[string]bool{"": true}
	for _, n := range f.oneOrMore("after") {
		name := oneLine(n.Value)
		if seen[name] {
			continue
		}
		seen[name] = true
		names = append(names, name)
		b.cuts.waits(cut, name, n)
	}
	return names
}
