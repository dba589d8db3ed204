package plantext

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
	"unicode"
)

// Place is a place in a file a maker wrote. The zero value is no place.
type Place struct {
	File   string
	Line   int    // from 1
	Column int    // from 1, in characters
	Source string // the whole line, for the excerpt under a message
}

// Known reports whether the place points into a file.
func (p Place) Known() bool { return p.Line > 0 }

// String gives "file:line:column".
func (p Place) String() string {
	if !p.Known() {
		return p.File
	}
	return fmt.Sprintf("%s:%d:%d", p.File, p.Line, p.Column)
}

// Fault is something in a plan, shop or book that stops the work.
type Fault struct {
	Place
	Problem string // what is wrong, in trade words, without a full stop
	Remedy  string // what would be right, without a full stop; may be empty
	Other   Place  // a second place, where two things clash
	Clash   string // what stands at Other
}

// Error gives the fault in one line; [Faults.Error] adds the excerpts.
func (f Fault) Error() string {
	if f.Place.File != "" {
		return f.Place.String() + ": " + f.Words()
	}
	return f.Words()
}

// Words are the fault without its place.
func (f Fault) Words() string {
	if f.Remedy == "" {
		return f.Problem
	}
	return f.Problem + "; " + f.Remedy
}

// Faults is a list of faults; as an error it prints them all.
type Faults []Fault

// Add appends a fault.
func (fs *Faults) Add(f Fault) { *fs = append(*fs, f) }

// Err returns the faults sorted by place and without doubles, or nil when
// there are none.
func (fs Faults) Err() error {
	if len(fs) == 0 {
		return nil
	}
	sorted := slices.Clone(fs)
	slices.SortStableFunc(sorted, func(a, b Fault) int {
		return cmp.Or(
			cmp.Compare(a.File, b.File),
			cmp.Compare(a.Line, b.Line),
			cmp.Compare(a.Column, b.Column))
	})
	told := map[Fault]bool{}
	return slices.DeleteFunc(sorted, func(f Fault) bool {
		twice := told[f]
		told[f] = true
		return twice
	})
}

// Error prints every fault with its line and a caret under the column.
func (fs Faults) Error() string {
	var b strings.Builder
	for i, f := range fs {
		if i > 0 {
			b.WriteByte('\n')
		}
		b.WriteString(heading(f))
		b.WriteString(f.Excerpt())
		if f.Remedy != "" {
			b.WriteString("  " + Printable(f.Remedy) + "\n")
		}
		if f.Other.Known() {
			b.WriteString("  " + Printable(f.Other.String()+": "+f.Clash) + "\n")
			b.WriteString(f.Other.Excerpt())
		}
	}
	return strings.TrimSuffix(b.String(), "\n")
}

func heading(f Fault) string {
	if f.Place.File == "" {
		return Printable(f.Problem) + "\n"
	}
	return Printable(f.Place.String()+": "+f.Problem) + "\n"
}

// excerptWidth is how much of a long line is shown, in characters.
const excerptWidth = 72

// Excerpt returns the place's line, indented, and below it a caret under the
// column; long lines are cut to the part around it, with an ellipsis where they are
// cut. It is empty where the place has no line.
func (p Place) Excerpt() string {
	if !p.Known() || p.Source == "" {
		return ""
	}
	column, from := max(p.Column, 1), 0
	if column > excerptWidth-8 {
		from = column - excerptWidth/2
	}
	shown := characters(p.Source, from, excerptWidth+1)
	if len(shown) > excerptWidth {
		shown = append(shown[:excerptWidth-1], '…')
	}
	if from > 0 && len(shown) > 0 {
		shown[0] = '…'
	}
	var pad strings.Builder
	for i := range column - 1 - from {
		// A tab moves the caret as far as it moved the text.
		if i < len(shown) && shown[i] == '\t' {
			pad.WriteByte('\t')
		} else {
			pad.WriteByte(' ')
		}
	}
	return "    " + Printable(string(shown)) + "\n    " + pad.String() + "^\n"
}

// characters returns up to n characters of a line that may be very long.
func characters(line string, from, n int) []rune {
	var some []rune
	for _, r := range line {
		switch {
		case from > 0:
			from--
		case len(some) == n:
			return some
		default:
			some = append(some, r)
		}
	}
	return some
}

// Printable returns a text that cannot harm a terminal: each character that is
// [Unprintable], and each byte that is no letter, is replaced by one "\uFFFD".
// Tabs stay.
func Printable(s string) string {
	return strings.Map(func(r rune) rune {
		if r != '\t' && Unprintable(r) {
			return unicode.ReplacementChar
		}
		return r
	}, s)
}

// Unprintable reports whether a character moves a terminal's cursor or turns
// the direction of writing.
func Unprintable(r rune) bool { return unicode.IsControl(r) || unicode.Is(unicode.Bidi_Control, r) }
