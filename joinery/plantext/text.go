package plantext

import (
	"iter"
	"slices"
	"strings"
	"unicode/utf8"
)

// UTF16 reports whether the bytes of a file look like UTF-16: a mark that says
// so, or a zero byte beside each of the first letters.
func UTF16(data []byte) bool {
	if len(data) < 4 {
		return false
	}
	first, second := data[0], data[1]
	marked := first == 0xfe && second == 0xff || first == 0xff && second == 0xfe
	return marked || first == 0 && data[2] == 0 && second != 0 || second == 0 && data[3] == 0 && first != 0
}

// Text is a file that a maker wrote, for messages that show its lines. It keeps
// four bytes a line besides the text, which is at most 4 GB.
type Text struct {
	name   string
	text   string
	starts []uint32 // where each line begins
}

// NewText splits a text into lines, which end in "\n".
func NewText(name, text string) *Text {
	t := &Text{name: name, text: text, starts: make([]uint32, 1, 1+strings.Count(text, "\n"))}
	for at := range len(text) {
		if text[at] == '\n' {
			t.starts = append(t.starts, uint32(at+1))
		}
	}
	return t
}

// String is the whole text.
func (t *Text) String() string { return t.text }

// Count is the number of lines, 1 or more; behind a last "\n" is an empty one.
func (t *Text) Count() int { return len(t.starts) }

// Start is where a line begins in the text, in bytes. Lines are counted from 1;
// past the last it is the text's end.
func (t *Text) Start(line int) int {
	if line > len(t.starts) {
		return len(t.text)
	}
	return int(t.starts[line-1])
}

// Line is a line without its end, or "" where there is none of that number.
func (t *Text) Line(n int) string {
	if n < 1 || n > len(t.starts) {
		return ""
	}
	return strings.TrimSuffix(t.text[t.Start(n):t.Start(n+1)], "\n")
}

// Lines gives every line with its number.
func (t *Text) Lines() iter.Seq2[int, string] {
	return func(yield func(int, string) bool) {
		for n := range t.starts {
			if !yield(n+1, t.Line(n+1)) {
				return
			}
		}
	}
}

// Place is a place by line and column, both from 1.
func (t *Text) Place(line, column int) Place {
	return Place{File: t.name, Line: line, Column: column, Source: t.Line(line)}
}

// Position is the line and column of an offset in the text, both from 1.
func (t *Text) Position(at int) (line, column int) {
	line, found := slices.BinarySearch(t.starts, uint32(at))
	if found {
		line++
	}
	return line, 1 + utf8.RuneCountInString(t.text[t.Start(line):at])
}
