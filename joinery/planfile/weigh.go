package planfile

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"fencecard/joinery"
)

// mostValues is the most words and values in a file: some 30,000 cuts.
const mostValues = 400_000

// mostAtOnce is the heaviest part of a file that is made a tree at once. A value
// in a tree takes some 200 bytes, twenty times its text; so a large plan is read
// some entries of its lists at a time, and only what is read of them is kept.
const mostAtOnce = 4_000

// batchShare is one part in so many of that: the entries of a list set aside are
// gone through one by one, so small trees do as well and take less memory.
const batchShare = 16

const tooLarge = "check that this is the file you mean; a large batch can be split into several plans"

// weigh counts what may stand before a value, and where the count passes the
// most; it counts too many rather than too few. Empty lines and remarks weigh
// nothing.
func weigh(text string, most int) (weight, passed int) {
	passed = -1
	for at := word(text, 0); at < len(text); at = word(text, at) {
		for weight++; at < len(text) && text[at] != '\n'; at++ {
			switch c := text[at]; {
			case c == ':' || c == ',' || c == '[' || c == '{', dashAt(text, at):
				if weight++; weight > most && passed < 0 {
					passed = at
				}
			}
		}
		if weight > most && passed < 0 {
			passed = at
		}
		at = min(at+1, len(text))
	}
	return weight, passed
}

// checkValues faults a file with more words and values than a plan can have.
func (r *reader) checkValues(what string) {
	text := r.text.String()
	if weight, passed := weigh(text, mostValues); weight > mostValues {
		at := further(text[:passed], 1, 1)
		r.add(joinery.Fault{
			Place:   r.at(at.Line, at.Column),
			Problem: fmt.Sprintf("%s has more than %d words and values up to here", what, mostValues),
			Remedy:  tooLarge,
		})
	}
}

// tooHeavy faults a part that is more than a tree may hold, even without the list
// in it that may be read by itself.
func (r *reader) tooHeavy(p part, at joinery.Place, without bool) {
	problem := fmt.Sprintf("%s has more than %d words and values up to here", p.what, r.most)
	if without {
		problem += ", the list of " + p.list + " not counted"
	}
	r.add(joinery.Fault{Place: r.at(at.Line, at.Column), Problem: problem, Remedy: tooLarge})
	r.broken = true
}

// further is the line and column behind a text that begins at others.
func further(text string, line, column int) joinery.Place {
	if lines := strings.Count(text, "\n"); lines > 0 {
		line, column = line+lines, 1
		text = text[strings.LastIndexByte(text, '\n')+1:]
	}
	return joinery.Place{Line: line, Column: column + utf8.RuneCountInString(text)}
}
