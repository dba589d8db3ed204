package book

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
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
			return plantext.Faults{{Place: t.place(i, len(formatLine)),
				Problem: "the format of the setup book has no number", Remedy: "write " + header}}
		}
		version, err := strconv.Atoi(m[1])
		if err != nil || version > Format {
			return plantext.Faults{{Place: t.place(i, 0),
				Problem: fmt.Sprintf("this setup book is in format %s, and this fencecard reads formats up to %d", plantext.Brief(m[1], 24), Format),
				Remedy:  "use a newer fencecard; the book was left as it is"}}
		}
		return nil
	}
	return nil
}

// ownKeys are fields that tell an entry of a book from a line "setup: x" of
// another file.
var ownKeys = []string{keyBit, keyDiameter, keyFence, keyCode}

// checkBook refuses a text that is no setup book, so that nothing is written
// into a plan or a letter: it neither names the format nor has an entry with a
// field of a setup. What is damaged of a book is told entry by entry instead.
func (t *text) checkBook(blocks []block) error {
	first := -1
	for i := range t.count() {
		line := t.line(i)
		if strings.HasPrefix(line, formatLine) {
			return nil
		}
		if first < 0 && strings.TrimSpace(line) != "" {
			first = i
		}
	}
	if first < 0 {
		return nil // an empty book
	}
	for _, b := range blocks {
		for i := int(b.first) + 1; i < int(b.last); i++ {
			if f, ok := t.fieldOf(i); ok && slices.Contains(ownKeys, f.key) {
				return nil
			}
		}
	}
	return plantext.Faults{{Place: t.place(first, 0), Problem: "this is no setup book",
		Remedy: "name another file; a book begins with the line " + header}}
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
