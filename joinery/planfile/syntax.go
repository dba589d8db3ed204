package planfile

import (
	"strings"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// slip is a slip in the writing of YAML: how the library words it, and how a
// maker would.
type slip struct {
	says    string // part of the library's message
	while   string // part of what it says it was doing, or ""
	fits    func(line, word string) bool
	opening bool // the place to show is where the thing began
	problem string
	remedy  string
}

// slips are tried in order; the last fits everything.
var slips = []slip{
	{says: "multiple", problem: "a second plan begins in this file", remedy: "take out the line ---, and keep one plan to a file"},
	{says: "mapping values are not allowed", fits: noSpaceAbove, problem: "the line above has no space after its colon, or this line is indented too far",
		remedy: "write key: value with a space after the colon, and keys of one thing straight below each other"},
	{says: "mapping values are not allowed", fits: oneColon, problem: "this line does not stand straight below the one it belongs with",
		remedy: "indent the keys of one piece or cut alike; a key inside another stands two spaces further in"},
	{says: "mapping values are not allowed", problem: "there is a second colon in this line",
		remedy: "put quotes round a text with a colon in it, such as note: \"first: this\"; write only one key to a line"},
	{says: "end of stream", while: "quoted", opening: true, problem: "a quotation mark begins here and none ends it",
		remedy: "put the same mark at the end of the text, or take this one out; a length needs none: write 3/8\" or 3/8 in"},
	{says: "unexpected document indicator", while: "quoted", opening: true, problem: "a quotation mark begins here and none ends it",
		remedy: "put the same mark at the end of the text, or take this one out"},
	{says: "escape", problem: "a backslash stands inside double quotes", remedy: "use single quotes round this text, or leave the backslash out"},
	{says: "expected ',' or ']'", opening: true, problem: "a list begins here with [ and is not closed", remedy: "put ] at its end, and a comma between its entries"},
	{says: "expected ',' or '}'", opening: true, problem: "a brace begins here and is not closed, or a comma is missing inside it",
		remedy: "write {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17} with commas between and } at the end"},
	{says: "cannot start any token", fits: begins("\t"), problem: "there is a tab here", remedy: "use spaces"},
	{says: "cannot start any token", problem: "a text cannot begin with this character", remedy: "put quotes round the text"},
	{says: "sequence entries are not allowed", problem: "a dash begins a list entry in the middle of a line", remedy: "begin the entry on a line of its own, or put quotes round a text that begins with a dash"},
	{says: "expected key", fits: begins("-"), problem: "this dash does not stand below the dash it belongs with",
		remedy: "indent the dashes of one list alike; the keys of an entry stand two spaces further in"},
	{says: "expected key", fits: indented, problem: "this line is not indented like the lines it belongs with",
		remedy: "indent the keys of one piece or cut alike"},
	{says: "expected key", problem: "something stands here after the end of a value", remedy: "put quotes round the whole text, or take out what does not belong; a length needs no quotes"},
	{says: "expected '-' indicator", problem: "this line is not indented like the lines it belongs with",
		remedy: "begin an entry of a list with a dash; indent the keys of an entry two spaces further than its dash"},
	{says: "expected ':'", opening: true, problem: "this line has no colon", remedy: "write key: value with a space after the colon; put a # before a remark"},
	{says: "directive", problem: "a line cannot begin with %", remedy: "put quotes round a text that begins with %, or a # before a remark"},
	{says: "document start", problem: "something stands here after the end of the plan", remedy: "take it out; a brace or bracket may be one too many"},
	{says: "anchor", fits: begins("*"), problem: "* stands for a value elsewhere, which a plan does not have", remedy: "write the value out here; if it is a name that begins with *, put quotes round it"},
	{says: "exceeded", problem: "lists and braces lie inside one another too deeply", remedy: "check the brackets; a plan needs no more than four inside one another"},
	{problem: "this line cannot be read", remedy: "check its colon, quotes, brackets and indentation against the plan that fencecard new writes"},
}

// syntax finds the slip behind the library's error.
func (r *reader) syntax(e *yaml.LoadError) joinery.Fault {
	place := r.markPlace(e.Mark)
	line := place.Source
	word := []rune(line)
	word = word[min(max(place.Column-1, 0), len(word)):]
	for _, s := range slips {
		if !strings.Contains(e.Message, s.says) || !strings.Contains(e.ContextMsg, s.while) {
			continue
		}
		if s.fits != nil && !s.fits(line, string(word)) {
			continue
		}
		if s.opening && e.ContextMark.Line > 0 {
			place = r.markPlace(e.ContextMark)
		}
		return joinery.Fault{Place: place, Problem: s.problem, Remedy: s.remedy}
	}
	return joinery.Fault{Place: place, Problem: e.Message}
}

// markPlace turns the library's mark into a place; one past the last line is
// shown at the last line's end.
func (r *reader) markPlace(m yaml.Mark) joinery.Place {
	if m.Line == 0 {
		return r.secondDocument()
	}
	line, column := m.Line, m.Column
	for line > 1 && (line > len(r.lines) || strings.TrimSpace(r.lines[line-1]) == "") {
		line--
		column = len([]rune(r.lines[line-1])) + 1
	}
	return r.at(line, column)
}

// secondDocument finds the line --- that the library tells no place of.
func (r *reader) secondDocument() joinery.Place {
	written := false
	for i, line := range r.lines {
		if strings.HasPrefix(line, "---") && written {
			return r.at(i+1, 1)
		}
		line = strings.TrimSpace(line)
		written = written || line != "" && line[0] != '#'
	}
	return joinery.Place{File: r.name}
}

func begins(prefix string) func(line, word string) bool {
	return func(_, word string) bool { return strings.HasPrefix(word, prefix) }
}

func indented(line, word string) bool {
	return strings.TrimSpace(strings.TrimSuffix(line, word)) == ""
}

// oneColon reports whether the line's first colon is the one complained of.
func oneColon(line, word string) bool {
	return !strings.Contains(strings.TrimSuffix(line, word), ": ")
}

// noSpaceAbove cannot see the line above; a line at the margin whose only
// colon is refused continues a key that had no space after its colon.
func noSpaceAbove(line, word string) bool {
	return oneColon(line, word) && !strings.HasPrefix(line, " ") && !strings.HasPrefix(line, "-")
}
