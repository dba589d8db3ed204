package where

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/planfile/yamlfile"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

var (
	spanText    = pattern.New(`(?i)^(?:from\s+)?(.+?)(?:\s+from\s+(?:the\s+)?(\S+))?\s+to\s+(.+?)\s+from\s+(?:the\s+)?(\S+)$`)
	wholeText   = pattern.New(`(?i)^(?:from\s+)?end to end$`)
	unitBehind  = pattern.New(`(?i)\s*([a-z"'″′”’]+\.?)$`)
	dashBetween = pattern.New(`\s*(?:\s-\s|–|—|\.\.+|…)\s*`)
)

// Span reads where a cut runs: "1/2 to 3 from top", or from both ends,
// "1/2 from top to 14 from bottom".
func Span(f *yamlfile.Fields, in joinery.Side, size joinery.Size, sized bool) joinery.Span {
	text, n, ok := f.Scalar("span")
	if !ok || wholeText.MatchString(text) {
		return joinery.Span{}
	}
	m := spanText.FindStringSubmatch(text)
	if m == nil {
		badSpan(f.File, n, text, in)
		return joinery.Span{}
	}
	before := len(f.File.Faults)
	from, _ := f.File.Length(n, m[1])
	to, _ := f.File.Length(n, m[3])
	last := f.File.Side(n, m[4])
	first := last
	if m[2] != "" {
		first = f.File.Side(n, m[2])
	}
	if len(f.File.Faults) > before {
		return joinery.Span{}
	}
	if first == last {
		return joinery.Span{From: from, To: to, Side: first, Bare: bare(f.File, m[1], m[3])}
	}
	return fromBothEnds(f.File, n, size, sized, joinery.Span{From: from, To: to, Side: first}, last)
}

// bare reports whether only the second line of a span such as "1 to 30 mm" has a
// unit, and not the plan's. A bare number is in the plan's, but whoever says the
// two aloud means 1 mm.
func bare(r *yamlfile.File, first, second string) bool {
	unit := unitBehind.FindStringSubmatch(second)
	if unit == nil {
		return false
	}
	bare, err := measure.ParseLength(first, r.Unit)
	alike, alikeErr := measure.ParseLength(first+unit[0], r.Unit)
	return err == nil && alikeErr == nil && alike != bare
}

// badSpan faults a text that is no span.
func badSpan(r *yamlfile.File, n *yaml.Node, text string, in joinery.Side) {
	from, to, two := strings.Cut(text, " to ")
	only, side, one := yamlfile.FromSide(text)
	joined := dashBetween.ReplaceAllString(text, " to ")
	switch {
	case two && r.IsLength(from) && r.IsLength(to):
		r.Fault(n, fmt.Sprintf("write span: %s from %s", text, plantext.List(besides(in), "or")), "the span does not say from which side")
	case spanText.MatchString(joined):
		r.Fault(n, "write span: "+joined, "%s is no span", yamlfile.Quoted(text))
	case one && r.IsLength(only):
		r.Fault(n, fmt.Sprintf("write both lines; if it begins at the %s, span: 0 to %s", side, text), "the span has only one line")
	default:
		r.Fault(n, "write the two lines it runs between, such as "+keys.Example("span")+"; leave span out for a cut from end to end",
			"%s is no span", yamlfile.Quoted(text))
	}
}

// fromBothEnds measures a span's far end from the same side as its near end.
func fromBothEnds(r *yamlfile.File, n *yaml.Node, size joinery.Size, sized bool, span joinery.Span, last joinery.Side) joinery.Span {
	if last != span.Side.Opposite() {
		r.Fault(n, fmt.Sprintf("measure both from the %s, or one from the %s", span.Side, span.Side.Opposite()),
			"a span cannot run from the %s to the %s", span.Side, last)
		return joinery.Span{}
	}
	if !sized {
		return joinery.Span{}
	}
	whole := size.Between(span.Side)
	if span.From+span.To >= whole {
		r.Fault(n, fmt.Sprintf("the piece measures %s %s %s; the two must leave something between them", r.Scale.Format(whole), r.Scale.Unit, span.Side.Dimension()),
			"the two ends of the span meet or pass each other")
		return joinery.Span{}
	}
	span.To = whole - span.To
	return span
}
