package book

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"fencecard/joinery/plantext"
)

// byteOrderMark opens a text file of some editors.
const byteOrderMark = "\ufeff"

// text is a file and where its lines begin. A line takes four bytes here and no
// string of its own, so that a file of empty lines stays small.
type text struct {
	name   string
	mark   string // the byte order mark, or ""
	ends   string // how lines end
	source string // behind the mark
	starts []uint32
}

// split finds a file's lines. A last line without an end counts as one.
func split(name, data string) text {
	t := text{name: name, ends: "\n"}
	if rest, ok := strings.CutPrefix(data, byteOrderMark); ok {
		t.mark, data = byteOrderMark, rest
	}
	if first := strings.IndexByte(data, '\n'); first > 0 && data[first-1] == '\r' {
		t.ends = "\r\n"
	}
	t.source = data
	t.starts = make([]uint32, 0, strings.Count(data, "\n")+1)
	for at := 0; at < len(data); {
		t.starts = append(t.starts, uint32(at))
		end := strings.IndexByte(data[at:], '\n')
		if end < 0 {
			break
		}
		at += end + 1
	}
	return t
}

// count is how many lines there are.
func (t *text) count() int { return len(t.starts) }

// line returns a line without its end, by its index from 0.
func (t *text) line(i int) string {
	return strings.TrimSuffix(strings.TrimSuffix(t.source[t.startOf(i):t.startOf(i+1)], "\n"), "\r")
}

// startOf is the byte where a line begins, or the text's end behind the last.
func (t *text) startOf(i int) int {
	if i < len(t.starts) {
		return int(t.starts[i])
	}
	return len(t.source)
}

// place is a place in the text: a line's index from 0, a byte in it.
func (t *text) place(line, at int) plantext.Place {
	source := t.line(line)
	return plantext.Place{
		File: t.name, Line: line + 1, Source: source,
		Column: utf8.RuneCountInString(source[:at]) + 1,
	}
}

// changed returns the file with lines in the place of those from first up to but
// not with last. All others stay as they are, but for the line that names the
// format, which stands at the top of whatever is written.
func (t *text) changed(first, last int, lines []string) []byte {
	var b bytes.Buffer
	b.Grow(len(t.source) + len(header) + 64)
	b.WriteString(t.mark)
	put := func(source string) {
		b.WriteString(source)
		if source != "" && !strings.HasSuffix(source, "\n") {
			b.WriteString(t.ends)
		}
	}
	switch at := t.headed(); {
	case at < 0:
		put(header + t.ends + t.ends)
		put(t.source[:t.startOf(first)])
	case t.line(at) == header:
		put(t.source[:t.startOf(first)])
	default:
		put(t.source[:t.startOf(at)])
		put(header)
		put(t.source[t.startOf(at+1):t.startOf(first)])
	}
	for _, line := range lines {
		b.WriteString(line)
		b.WriteString(t.ends)
	}
	put(t.source[t.startOf(last):])
	return b.Bytes()
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
