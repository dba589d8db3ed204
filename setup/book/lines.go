package book

import (
	"strings"
	"unicode/utf8"

	"fencecard/joinery"
)

// byteOrderMark opens a text file of some editors.
const byteOrderMark = "\ufeff"

// text is the file's lines, without their ends.
type text struct {
	name  string
	mark  string // the byte order mark, or ""
	ends  string // how lines end
	lines []string
}

// split cuts a file into lines. A last line without an end counts as one.
func split(name, data string) text {
	t := text{name: name, ends: "\n"}
	if rest, ok := strings.CutPrefix(data, byteOrderMark); ok {
		t.mark, data = byteOrderMark, rest
	}
	if first := strings.IndexByte(data, '\n'); first > 0 && data[first-1] == '\r' {
		t.ends = "\r\n"
	}
	if data = strings.TrimSuffix(data, "\n"); data == "" {
		return t
	}
	t.lines = strings.Split(data, "\n")
	for i, line := range t.lines {
		t.lines[i] = strings.TrimSuffix(line, "\r")
	}
	return t
}

// bytes joins the lines again.
func (t text) bytes() []byte {
	var b strings.Builder
	b.WriteString(t.mark)
	for _, line := range t.lines {
		b.WriteString(line)
		b.WriteString(t.ends)
	}
	return []byte(b.String())
}

// place is a place in the text: a line's index from 0, a byte in it.
func (t text) place(line, at int) joinery.Place {
	source := t.lines[line]
	return joinery.Place{
		File: t.name, Line: line + 1, Source: source,
		Column: utf8.RuneCountInString(source[:at]) + 1,
	}
}

// blank reports whether a line is empty or a comment.
func blank(line string) bool {
	line = strings.TrimLeft(line, " \t")
	return line == "" || line[0] == '#'
}

// blanks returns the blanks before a line's first word.
func blanks(line string) string {
	return line[:len(line)-len(strings.TrimLeft(line, " \t"))]
}

// tabStop is how far a tab moves.
const tabStop = 8

// indentOf measures the blanks before a line's first word, in columns.
func indentOf(line string) int {
	columns := 0
	for _, c := range line {
		switch c {
		case ' ':
			columns++
		case '\t':
			columns += tabStop - columns%tabStop
		default:
			return columns
		}
	}
	return columns
}

// field is one line "key: value".
type field struct {
	key   string // in lower case
	value string
	line  int // index from 0
	at    int // the byte in the line where the value begins
}

// fieldOf reads a line as a field.
func (t text) fieldOf(line int) (field, bool) {
	source := t.lines[line]
	key, value, ok := strings.Cut(source, ":")
	key = strings.ToLower(strings.TrimSpace(key))
	if !ok || key == "" {
		return field{}, false
	}
	value = strings.TrimLeft(value, " \t")
	return field{key: key, value: strings.TrimSpace(value), line: line, at: len(source) - len(value)}, true
}

// withoutComment cuts a comment off a value that is no free text.
func withoutComment(value string) (bare, comment string) {
	for i := range value {
		if value[i] == '#' && (i == 0 || value[i-1] == ' ' || value[i-1] == '\t') {
			return strings.TrimRight(value[:i], " \t"), value[i:]
		}
	}
	return value, ""
}
