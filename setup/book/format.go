package book

import (
	"fmt"
	"strconv"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/pattern"
)

// Format is the version of the file format that is written. Older ones are
// read, newer ones are refused.
const Format = 1

const formatLine = "fencecard setup book"

// header opens a book that has none yet.
var header = fmt.Sprintf("%s %d", formatLine, Format)

var versionOf = pattern.New(`^` + formatLine + ` +0*([1-9]\d*)\s*$`)

// checkFormat refuses a text that says it is in a newer format. Without a word
// on it, it is in the oldest.
func (t *text) checkFormat() error {
	for i := range t.count() {
		line := t.line(i)
		switch {
		case blank(line):
			continue
		case !strings.HasPrefix(line, formatLine):
			return nil
		}
		m := versionOf.FindStringSubmatch(line)
		if m == nil {
			return joinery.Faults{{Place: t.place(i, len(formatLine)),
				Problem: "the format of the setup book has no number", Remedy: "write " + header}}
		}
		version, err := strconv.Atoi(m[1])
		if err != nil || version > Format {
			return joinery.Faults{{Place: t.place(i, 0),
				Problem: fmt.Sprintf("this setup book is in format %s, and this fencecard reads formats up to %d", joinery.Brief(m[1], 24), Format),
				Remedy:  "use a newer fencecard; the book was left as it is"}}
		}
		return nil
	}
	return nil
}

// headed returns the index of the line that names the format, or -1.
func (t *text) headed() int {
	for i := range t.count() {
		switch line := t.line(i); {
		case strings.HasPrefix(line, formatLine):
			return i
		case !blank(line):
			return -1
		}
	}
	return -1
}
