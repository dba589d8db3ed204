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

// block is the lines of one entry, from its setup line up to but not with
// last. Blank lines and comments at the left margin behind it are not its own.
type block struct{ first, last uint32 }

// divide finds the entries' lines, and faults lines that belong to none.
func (t *text) divide() (blocks []block, faults complaints) {
	current := -1 // the entry that indented lines belong to
	strange := false
	for i := range t.count() {
		line := t.line(i)
		indented := indentOf(line) > 0
		switch {
		case blank(line):
			// A comment of an entry is indented as its fields are.
			if indented && current >= 0 && strings.TrimSpace(line) != "" {
				blocks[current].last = uint32(i + 1)
			}
			continue
		case indented:
			if current >= 0 {
				blocks[current].last = uint32(i + 1)
			} else if !strange {
				strange = true
				faults.add(joinery.Fault{Place: t.place(i, 0),
					Problem: "this line stands below no setup", Remedy: "write setup: NAME at the left margin above it"})
			}
			continue
		}
		if f, ok := t.fieldOf(i); ok && f.key == "setup" {
			current, strange = len(blocks), false
			blocks = append(blocks, block{uint32(i), uint32(i + 1)})
			continue
		}
		current, strange = -1, true
		if !strings.HasPrefix(line, formatLine) {
			faults.add(stray(t.place(i, 0), line))
		}
	}
	return blocks, faults
}

// stray is the fault of a line at the left margin that begins no setup.
func stray(place joinery.Place, line string) joinery.Fault {
	for _, sign := range []string{"<<<<<<<", "=======", ">>>>>>>", "|||||||"} {
		if strings.HasPrefix(line, sign) {
			return joinery.Fault{Place: place,
				Problem: "two versions of the book were merged here and not settled",
				Remedy:  "keep the correct lines and take the marks of the merge away"}
		}
	}
	return joinery.Fault{Place: place, Problem: "this line begins no setup",
		Remedy: "write setup: NAME to begin one, indent a field of the setup above, or begin a comment with #"}
}

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
