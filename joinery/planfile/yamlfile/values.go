package yamlfile

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// Limits on what a plan may say, so that cards stay readable.
const (
	LongestName = 100 // characters
	LongestNote = 1000
)

// Length reads a length; 0 and a fault where it is none.
func (f *Fields) Length(key string) measure.Length {
	text, n, ok := f.Scalar(key)
	if !ok {
		return 0
	}
	l, _ := f.File.Length(n, text)
	return l
}

// Positive reads a length that must be above 0.
func (f *Fields) Positive(key string) measure.Length {
	text, n, ok := f.Scalar(key)
	if !ok {
		return 0
	}
	l, ok := f.File.Length(n, text)
	if ok && l == 0 {
		f.File.Fault(n, "write a length above 0, such as "+f.Example(key), "%s is 0", key)
	}
	return l
}

// Length reads a part of a node's text as a length.
func (r *File) Length(n *yaml.Node, text string) (measure.Length, bool) {
	l, err := measure.ParseLength(text, r.Unit)
	if err == nil {
		return l, true
	}
	r.BadLength(n, text, err)
	return 0, false
}

// IsLength reports whether a text is a length; it faults nothing.
func (r *File) IsLength(text string) bool {
	_, err := measure.ParseLength(text, r.Unit)
	return err == nil
}

// BadLength faults a text that is no length, where it stands in its line.
func (r *File) BadLength(n *yaml.Node, text string, err error) {
	var bad *measure.LengthError
	if errors.As(err, &bad) {
		r.Add(plantext.Fault{Place: Inside(r.Place(n), text), Problem: Quoted(bad.Text) + " " + bad.Problem, Remedy: bad.Remedy})
	}
}

// Inside returns the place of a part of the text that begins at a place where
// it can be found in that line, else the place itself.
func Inside(p plantext.Place, part string) plantext.Place {
	_, rest := around(p)
	if at := strings.Index(rest, part); at > 0 {
		p.Column += utf8.RuneCountInString(rest[:at])
	}
	return p
}

// Side reads the name of a side.
func (f *Fields) Side(key string) joinery.Side {
	text, n, ok := f.Scalar(key)
	if !ok {
		return joinery.NoSide
	}
	return f.File.Side(n, text)
}

// Side reads a part of a node's text as a side.
func (r *File) Side(n *yaml.Node, text string) joinery.Side {
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
		named = keys.SideNames()
	}
	r.Choice(Inside(r.Place(n), text), "side", text, named...)
	return joinery.NoSide
}

// Dimension reads a part of a node's text as a dimension.
func (r *File) Dimension(n *yaml.Node, text string) (joinery.Dimension, bool) {
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
		r.Add(plantext.Fault{Place: Inside(r.Place(n), text), Problem: Quoted(text) + " is no dimension", Remedy: "write " + near})
		return 0, false
	}
	r.Choice(Inside(r.Place(n), text), "dimension", text, keys.DimensionNames()...)
	return 0, false
}

// Choice faults a word that is none of a few.
func (r *File) Choice(at plantext.Place, what, text string, words ...string) {
	remedy := "write " + plantext.List(words, "or")
	if near := keys.Meant(strings.ToLower(text), words); near != "" {
		remedy = "write " + near
	}
	r.Add(plantext.Fault{Place: at, Problem: Quoted(text) + " is no " + what, Remedy: remedy})
}

// Word reads one of a few words and returns its index, -1 where it was not
// written or is wrong. Words in also are understood but not offered; they
// stand for the word at the same index.
func (f *Fields) Word(key, what string, words []string, also ...string) int {
	text, n, ok := f.Scalar(key)
	if !ok {
		return -1
	}
	for i, w := range slices.Concat(words, also) {
		if strings.EqualFold(w, text) {
			return i % len(words)
		}
	}
	f.File.Choice(f.File.Place(n), what, text, words...)
	return -1
}

// Name reads a name; it must not be empty.
func (f *Fields) Name(key string) string { return f.Text(key, LongestName) }

// Text reads a text of one line.
func (f *Fields) Text(key string, longest int) string {
	text, n, ok := f.Scalar(key)
	if !ok {
		return ""
	}
	return f.File.Cleaned(n, key, text, longest)
}

// OneLine brings the blanks of a text together, so that a name is the same
// however it was spaced.
func OneLine(text string) string { return strings.Join(strings.Fields(text), " ") }

// Cleaned brings a text into one line; where it is too long or cannot be printed it is faulted.
func (r *File) Cleaned(n *yaml.Node, key, text string, longest int) string {
	text = OneLine(text)
	what := key
	if longest == LongestName && key != "title" {
		what = "name"
	}
	switch length := utf8.RuneCountInString(text); {
	case text == "":
		r.Fault(n, "write "+keys.Example(key), "the %s is empty", what)
	case length > longest:
		r.Fault(n, fmt.Sprintf("shorten it to %d", longest), "the %s is %d characters long", what, length)
	case strings.ContainsFunc(text, control):
		r.Fault(n, "take out the backslash and what follows it", "the %s has an invisible character", what)
	default:
		return text
	}
	return ""
}

// Unit reads the unit of bare numbers.
func (f *Fields) Unit() (measure.Unit, bool) {
	if text, n, ok := f.Scalar("unit"); ok && slices.Contains([]string{"cm", "m", "ft", "feet", "foot"}, strings.ToLower(text)) {
		f.File.Fault(n, "write in or mm; a length in another unit has it behind: 2.5 cm, or 1' 6\"", "a plan is in inches or in millimetres, not in %s", text)
		return measure.Inches, false
	}
	switch f.Word("unit", "unit", keys.UnitWords, "inch", "millimetre", "inches", "millimetres", "inches", "millimeters") {
	case 0:
		return measure.Inches, true
	case 1:
		return measure.Millimetres, true
	}
	return measure.Inches, false
}

// Answer reads yes or no.
func (f *Fields) Answer(key string) joinery.Answer {
	switch f.Word(key, "answer", keys.AnswerWords, "true", "false") {
	case 0:
		return joinery.Yes
	case 1:
		return joinery.No
	}
	return joinery.NotSaid
}
