package spreadsheet

import (
	"iter"
	"strings"

	"fencecard/joinery/measure"
	"fencecard/joinery/pattern"
)

// NumberStyle is how a list writes decimals.
type NumberStyle uint8

const (
	noStyle NumberStyle = iota
	pointStyle
	commaStyle
	mixedStyle
)

var (
	commaDecimal = pattern.New(`^\d+,(?:\d{1,2}|\d{4,})(?:$|[^\d.,/])|^0?,\d+|\d\.\d{3},\d`)
	pointDecimal = pattern.New(`^\d+\.(?:\d{1,2}|\d{4,})(?:$|[^\d.,/])|^0?\.\d+|\d,\d{3}\.\d`)
	figures      = pattern.New(`^([\d.,']*\d)\s*(.*)$`)
	grouped      = pattern.New(`^\d{1,3}(?:[.,']\d{3})+(?:[.,]\d+)?$`)
	inDoubt      = pattern.New(`^([1-9]\d{0,2})[.,'](\d{3})$`)
	tenThousands = pattern.New(`^[1-9]\d{1,2}[.,]\d{3}(?:$|[^\d.,])`)
	oneComma     = pattern.New(`^\d*,\d+$`)
)

// StyleOf finds how a list writes decimals: by those of its numbers that can be
// read in one way only.
func StyleOf[C any](numbers iter.Seq2[C, string]) NumberStyle {
	style := noStyle
	for _, text := range numbers {
		found := noStyle
		long := tenThousands.MatchString(text) // no piece is: the mark is that of decimals
		switch {
		case commaDecimal.MatchString(text), long && strings.Contains(text, ","):
			found = commaStyle
		case pointDecimal.MatchString(text), long && strings.Contains(text, "."):
			found = pointStyle
		}
		switch {
		case found == noStyle || found == style:
		case style == noStyle:
			style = found
		default:
			style = mixedStyle
		}
	}
	return style
}

// Plain writes a number as package measure reads it: a point for decimals,
// nothing between thousands. Where 1.200 may be a little over one or more than
// a thousand and the list's other numbers do not tell, both are returned, the
// likelier first.
func (s NumberStyle) Plain(text string, unit measure.Unit) (clean string, doubt []string) {
	m := figures.FindStringSubmatch(text)
	if m == nil || !strings.ContainsAny(m[1], ".,'") {
		return text, nil
	}
	number, rest := m[1], m[2]
	if rest != "" && (rest[0] == '/' || rest[0] == '\'' && !strings.HasPrefix(rest, "''")) {
		return text, nil // a fraction, or feet
	}
	join := func(number string) string { return strings.TrimSpace(number + " " + rest) }
	switch in := inDoubt.FindStringSubmatch(number); {
	case in != nil:
		little := strings.TrimSuffix(strings.TrimRight(in[1]+"."+in[2], "0"), ".")
		return s.thousand(text, number[len(in[1])], join(little), join(in[1]+in[2]), unit)
	case grouped.MatchString(number):
		return join(ungrouped(number)), nil
	case oneComma.MatchString(number):
		return join(strings.Replace(number, ",", ".", 1)), nil
	}
	return text, nil
}

// thousand decides between the two readings of a number such as 1.200, by the
// mark in it.
func (s NumberStyle) thousand(text string, mark byte, little, large string, unit measure.Unit) (clean string, doubt []string) {
	switch {
	case mark == '\'' && unit == measure.Inches: // or are these feet?
		return text, []string{large}
	case mark == '\'':
		return large, nil
	case mark == '.' && (unit == measure.Inches || s == pointStyle),
		mark == ',' && s == commaStyle:
		return little, nil
	case mark == '.' && s == commaStyle, mark == ',' && s == pointStyle:
		return large, nil
	case unit == measure.Inches:
		return little, []string{little, large}
	}
	return large, []string{large, little}
}

var marksOut = strings.NewReplacer(".", "", ",", "", "'", "")

// ungrouped takes out the marks between thousands. The last mark is that of the
// decimals where there is only one of its kind.
func ungrouped(number string) string {
	last := strings.LastIndexAny(number, ".,")
	if last < 0 || strings.Count(number, number[last:last+1]) > 1 {
		return marksOut.Replace(number)
	}
	return marksOut.Replace(number[:last]) + "." + number[last+1:]
}
