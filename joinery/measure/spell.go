package measure

import "strings"

// Spell writes a length so that [ParseSpelled] reads back the very same one,
// with its unit: "1 5/8 in", "-0.496 in", "9.525 mm". Unlike [Scale.Format] it
// never rounds, so it is for files that are read again, not for the bench.
func (s Scale) Spell(l Length) string {
	for _, finest := range s.spellings() {
		if finest.On(l) {
			return finest.Format(l) + " " + finest.Unit.String()
		}
	}
	return l.MM() + " mm"
}

// spellings lists the scales tried for a length, the maker's own way first.
func (s Scale) spellings() []Scale {
	fractions, thousandths := Scale{Inches, Inch / 1024}, Scale{Inches, Inch / 10_000}
	switch {
	case s.Unit == Millimetres:
		return nil
	case s.fractional():
		return []Scale{fractions, thousandths}
	}
	return []Scale{thousandths, fractions}
}

// ParseSpelled reads a length that may be negative, as the distance to the near
// edge of a bit buried in the fence is. The error is a [*LengthError].
func ParseSpelled(text string, unit Unit) (Length, error) {
	positive, negative := strings.CutPrefix(strings.TrimSpace(text), "-")
	l, err := ParseLength(positive, unit)
	if negative {
		l = -l
	}
	return l, err
}
