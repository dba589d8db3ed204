package book

import (
	"strings"

	"fencecard/joinery/plantext"
)

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
				faults.add(plantext.Fault{Place: t.place(i, 0),
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
func stray(place plantext.Place, line string) plantext.Fault {
	for _, sign := range []string{"<<<<<<<", "=======", ">>>>>>>", "|||||||"} {
		if strings.HasPrefix(line, sign) {
			return plantext.Fault{Place: place,
				Problem: "two versions of the book were merged here and not settled",
				Remedy:  "keep the correct lines and take the marks of the merge away"}
		}
	}
	return plantext.Fault{Place: place, Problem: "this line begins no setup",
		Remedy: "write setup: NAME to begin one, indent a field of the setup above, or begin a comment with #"}
}
