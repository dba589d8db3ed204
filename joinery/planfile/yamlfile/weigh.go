package yamlfile

import (
	"fmt"
	"strings"

	"fencecard/joinery/plantext"
)

// mostValues is the most words and values in a file: some 30,000 cuts. One takes
// some 200 bytes in a tree of YAML, so a tree never takes more than 100 MB.
const mostValues = 400_000

const tooLarge = "check that this is the file you mean; a large batch can be split into several plans"

// checkValues faults a file with more words and values than a plan can have,
// before a tree is made of them. It counts what may stand before a value, too
// many rather than too few; empty lines and remarks count for nothing.
func (r *File) checkValues(what string) {
	count := 0
	for n, line := range r.Text.Lines() {
		if word := strings.TrimLeft(line, " \t"); word == "" || word[0] == '#' {
			continue
		}
		count++
		for at := range len(line) {
			if beforeValue(line, at) {
				count++
			}
			if count > mostValues {
				r.Add(plantext.Fault{
					Place:   r.at(n, column(line, at)),
					Problem: fmt.Sprintf("%s has more than %d words and values up to here", what, mostValues),
					Remedy:  tooLarge,
				})
				return
			}
		}
	}
}

// beforeValue reports whether a value may begin behind the character at the
// offset.
func beforeValue(line string, at int) bool {
	switch line[at] {
	case ':', ',', '[', '{':
		return true
	case '-':
		return at+1 == len(line) || line[at+1] == ' ' || line[at+1] == '\t'
	}
	return false
}
