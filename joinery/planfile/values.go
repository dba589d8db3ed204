package planfile

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// Limits on what a plan may say, so that cards stay readable.
const (
	longestName = 100 // characters
	longestNote = 1000
	mostCount   = 10_000
)

// length reads a length; 0 and a fault where it is none.
func (f *fields) length(key string) joinery.Length {
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	l, _ := f.r.length(n, text)
	return l
}

// positive reads a length that must be above 0.
func (f *fields) positive(key string) joinery.Length {
	text, n, ok := f.scalar(key)
	if !ok {
		return 0
	}
	l, ok := f.r.length(n, text)
	if ok && l == 0 {
		f.r.fault(n, "write a length above 0, such as "+f.example(key), "%s is 0", key)
	}
	return l
}

// length reads a part of a node's text as a length.
func (r *reader) length(n *yaml.Node, text string) (joinery.Length, bool) {
	l, err := joinery.ParseLength(text, r.unit)
	if err == nil {
		return l, true
	}
	r.badLength(n, text, err)
	return 0, false
}

// isLength reports whether a text is a length; it faults nothing.
func (r *reader) isLength(text string) bool {
	_, err := joinery.ParseLength(text, r.unit)
	return err == nil
}

func (r *reader) badLength(n *yaml.Node, text string, err error) {
	var bad *joinery.LengthError
	if errors.As(err, &bad) {
		r.add(joinery.Fault{Place: inside(r.place(n), text), Problem: quoted(bad.Text) + " " + bad.Problem, Remedy: bad.Remedy})
	}
}

// inside returns the place of a part of the text that begins at a place where
// it can be found in that line, else the place itself.
func inside(p joinery.Place, part string) joinery.Place {
	_, rest := around(p)
	if at := strings.Index(rest, part); at > 0 {
		p.Column += utf8.RuneCountInString(rest[:at])
	}
	return p
}

// side reads the name of a side.
func (f *fields) side(key string) joinery.Side {
	text, n, ok := f.scalar(key)
	if !ok {
		return joinery.NoSide
	}
	return f.r.side(n, text)
}

// side reads a part of a node's text as a side.
func (r *reader) side(n *yaml.Node, text string) joinery.Side {
	word := strings.TrimPrefix(strings.ToLower(text), "the ")
	if s, ok := joinery.ParseSide(word); ok {
		return s
	}
	var named []string
	for _, w := range strings.FieldsFunc(word, func(c rune) bool { return !unicode.IsLetter(c) }) {
		if s, ok := joinery.ParseSide(w); ok {
			named = append(named, s.String())
		}
	}
	if named == nil {
		named = sideNames()
	}
	r.choice(inside(r.place(n), text), "side", text, named...)
	return joinery.NoSide
}

// dimension reads a part of a node's text as a dimension.
func (r *reader) dimension(n *yaml.Node, text string) (joinery.Dimension, bool) {
	if d, ok := joinery.ParseDimension(strings.ToLower(text)); ok {
		return d, true
	}
	near := ""
	first, last, _ := strings.Cut(strings.ToLower(text), "-")
	for _, d := range joinery.Dimensions {
		if text := d.String(); text == last+"-"+first || first == d.Low().String() || first == d.High().String() {
			near = text
		}
	}
	if near != "" {
		r.add(joinery.Fault{Place: inside(r.place(n), text), Problem: quoted(text) + " is no dimension", Remedy: "write " + near})
		return 0, false
	}
	r.choice(inside(r.place(n), text), "dimension", text, dimensionNames()...)
	return 0, false
}

// choice faults a word that is none of a few.
func (r *reader) choice(at joinery.Place, what, text string, words ...string) {
	remedy := "write " + joinery.List(words, "or")
	if near := meant(strings.ToLower(text), words); near != "" {
		remedy = "write " + near
	}
	r.add(joinery.Fault{Place: at, Problem: quoted(text) + " is no " + what, Remedy: remedy})
}

// word reads one of a few words and returns its index, -1 where it was not
// written or is wrong. Words in also are understood but not offered; they
// stand for the word at the same index.
func (f *fields) word(key, what string, words []string, also ...string) int {
	text, n, ok := f.scalar(key)
	if !ok {
		return -1
	}
	for i, w := range slices.Concat(words, also) {
		if strings.EqualFold(w, text) {
			return i % len(words)
		}
	}
	f.r.choice(f.r.place(n), what, text, words...)
	return -1
}

// name reads a name; it must not be empty.
func (f *fields) name(key string) string { return f.text(key, longestName) }

// text reads a text of one line.
func (f *fields) text(key string, longest int) string {
	text, n, ok := f.scalar(key)
	if !ok {
		return ""
	}
	return f.r.cleaned(n, key, text, longest)
}

// oneLine brings the blanks of a text together, so that a name is the same
// however it was spaced.
func oneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// cleaned brings a text into one line; where it is too long or cannot be printed it is faulted.
func (r *reader) cleaned(n *yaml.Node, key, text string, longest int) string {
	text = oneLine(text)
	what := key
	if longest == longestName && key != "title" {
		what = "name"
	}
	switch length := utf8.RuneCountInString(text); {
	case text == "":
		r.fault(n, "write "+example(key), "the %s is empty", what)
	case length > longest:
		r.fault(n, fmt.Sprintf("shorten it to %d", longest), "the %s is %d characters long", what, length)
	case strings.ContainsFunc(text, control):
		r.fault(n, "take out the backslash and what follows it", "the %s has an invisible character", what)
	default:
		return text
	}
	return ""
}

// unit reads the unit of bare numbers.
func (f *fields) unit() (joinery.Unit, bool) {
	if text, n, ok := f.scalar("unit"); ok && slices.Contains([]string{"cm", "m", "ft", "feet", "foot"}, strings.ToLower(text)) {
		f.r.fault(n, "write in or mm; a length in another unit has it behind: 2.5 cm, or 1' 6\"", "a plan is in inches or in millimetres, not in %s", text)
		return joinery.Inches, false
	}
	switch f.word("unit", "unit", unitWords, "inch", "millimetre", "inches", "millimetres", "inches", "millimeters") {
	case 0:
		return joinery.Inches, true
	case 1:
		return joinery.Millimetres, true
	}
	return joinery.Inches, false
}

// answer reads yes or no.
func (f *fields) answer(key string) joinery.Answer {
	switch f.word(key, "answer", answerWords, "true", "false") {
	case 0:
		return joinery.Yes
	case 1:
		return joinery.No
	}
	return joinery.NotSaid
}
