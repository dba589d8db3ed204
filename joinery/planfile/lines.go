package planfile

import (
	"fmt"
	"regexp"
	"slices"
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

var (
	setbackText = regexp.MustCompile(`(?i)^(.+?)\s+from\s+(?:the\s+)?(\S+)$`)
	centredText = regexp.MustCompile(`(?i)^(?:centred|centered|centre|center)(?:\s+from\s+(?:the\s+)?(\S+))?$`)
	spanText    = regexp.MustCompile(`(?i)^(?:from\s+)?(.+?)(?:\s+from\s+(?:the\s+)?(\S+))?\s+to\s+(.+?)\s+from\s+(?:the\s+)?(\S+)$`)
	wholeText   = regexp.MustCompile(`(?i)^(?:from\s+)?end to end$`)
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
		r.noSide(n, "setback", text, in)
		return joinery.Setback{}
	}
	distance, _ := r.length(n, m[1])
	return joinery.Setback{Distance: distance, From: r.side(n, m[2])}
}

// noSide faults a setback that is no distance from a side.
func (r *planReader) noSide(n *yaml.Node, key, text string, in joinery.Side) {
	if _, err := joinery.ParseLength(text, r.unit); err != nil {
		r.fault(n, "write "+examplesOf[key]+", or "+key+": centred", "%q is no distance from a side", short(text))
		return
	}
	var remedies []string
	for _, s := range joinery.Sides {
		if in == joinery.NoSide || s.Dimension() != in.Dimension() {
			remedies = append(remedies, s.String())
		}
	}
	r.fault(n, fmt.Sprintf("write %s: %s from %s", key, text, list(remedies, "or")), "the %s does not say from which side", key)
}

// readSpan reads where a cut runs: "1/2 to 3 from top", or from both ends,
// "1/2 from top to 14 from bottom".
func (r *planReader) readSpan(f *fields, b *blank) joinery.Span {
	text, n, ok := f.scalar("span")
	if !ok || wholeText.MatchString(text) {
		return joinery.Span{}
	}
	m := spanText.FindStringSubmatch(text)
	if m == nil {
		r.fault(n, "write the two lines it runs between, such as "+examplesOf["span"]+"; leave span out for a cut from end to end",
			"%q is no span", short(text))
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
	for _, n := range f.oneOrMore("after") {
		name := strings.Join(strings.Fields(n.Value), " ")
		if name == "" || slices.Contains(names, name) {
			continue
		}
		names = append(names, name)
		b.cuts.waits(cut, name, n)
	}
	return names
}
