package yamlfile

import (
	"strings"
	"unicode/utf8"

	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// slip is a slip in the writing of YAML: how the library words it, and how a
// maker would.
type slip struct {
	says    string // part of what the library says it found
	while   string // part of what it says it was reading
	fits    func(before, after string) bool
	opening bool // the place to show is where the thing began
	indent  bool // the remedy is how far to indent the line
	problem string
	remedy  string
}

// slips are tried in order; the last fits everything. What fits is asked of
// the line shown, before and after the place.
var slips = []slip{
	{says: "multiple", problem: "a second plan begins in this file", remedy: "take out the line ---, and keep one plan to a file"},
	{says: "mapping values", fits: curly, problem: "curly quotes are letters like any other, and there is a colon behind them",
		remedy: `use straight quotes round a text with a colon in it: "first: this"`},
	{says: "mapping values", fits: roundBracket, problem: "round brackets stand where braces belong", remedy: "write { for ( and } for )"},
	{says: "mapping keys", problem: "a question mark stands alone", remedy: "write the value, or put quotes round the text"},
	{says: "mapping values", fits: oneColon, indent: true, problem: "this line does not stand straight below the one it belongs with"},
	{says: "mapping values", problem: "there is a second colon in this line",
		remedy: `put quotes round a text with a colon in it, such as note: "first: this"; write only one key to a line`},
	{while: "quoted", says: "escape", problem: "a backslash stands inside double quotes", remedy: "use single quotes round this text, or leave the backslash out"},
	{while: "quoted", says: "number", problem: "a backslash stands inside double quotes", remedy: "use single quotes round this text, or leave the backslash out"},
	{while: "quoted", opening: true, problem: "a quotation mark begins here and none ends it",
		remedy: `put the same mark at the end of the text, or take this one out; a length needs no quotes: write 3/8" or 3/8 in`},
	{says: "',' or ']'", opening: true, problem: "a list begins here with [ and is not closed", remedy: "put ] at its end, and a comma between its entries"},
	{says: "',' or '}'", opening: true, fits: semicolon, problem: "a semicolon stands where a comma belongs", remedy: "put commas between the values in these braces"},
	{says: "',' or '}'", opening: true, problem: "a brace begins here and is not closed, or a comma is missing inside it",
		remedy: "put } after the last value, and a comma between one value and the next key"},
	{says: "cannot start any token", problem: "a text cannot begin with this character", remedy: "put quotes round the text"},
	{says: "alphabetic or numeric", problem: "a text cannot begin with this character", remedy: "put quotes round the text"},
	{says: "tag", problem: "a value that begins with ! is given a type, which a plan does not have", remedy: "take it out; if it is a name that begins with !, put quotes round it"},
	{while: "block scalar", problem: "a value begins with | or > here", remedy: "put quotes round a text that begins with it"},
	{says: "sequence entries", problem: "a dash begins a list entry in the middle of a line", remedy: "begin the entry on a line of its own, or put quotes round a text that begins with a dash"},
	{says: "expected key", fits: indented, indent: true, problem: "this line is not indented like the lines it belongs with"},
	{says: "expected key", fits: apostrophe, problem: "an apostrophe ends the text here", remedy: "put double quotes round a text with an apostrophe in it"},
	{says: "expected key", problem: "something stands here after the end of a value", remedy: "put quotes round the whole text, or take out what does not belong; a length needs no quotes"},
	{says: "expected '-'", indent: true, problem: "this line is not indented like the lines it belongs with"},
	{says: "expected ':'", opening: true, problem: "this line has no colon", remedy: "write key: value with a space after the colon; put a # before a remark"},
	{while: "directive", problem: "a line cannot begin with %", remedy: "put quotes round a text that begins with %, or a # before a remark"},
	{says: "document start", problem: "something stands here after the end of the plan", remedy: "take it out; a brace or bracket may be one too many"},
	{says: "node content", problem: "something is missing before this character", remedy: "write the value before it, or take the character out"},
	{says: "unknown anchor", problem: "a value that begins with * is taken from elsewhere in the file, which a plan does not do",
		remedy: "write the value out here; if it is a name that begins with *, put quotes round it"},
	{says: "depth", problem: "lists and braces lie inside one another too deeply", remedy: "check the brackets; a plan has at most four inside one another"},
	{problem: "this line cannot be read", remedy: "check its colon, quotes, brackets and indentation against the plan that fencecard new writes"},
}

func curly(before, _ string) bool { return strings.ContainsAny(before, "“”") }

func roundBracket(before, _ string) bool { return strings.Contains(before, ": (") }

// apostrophe reports whether a text in single quotes goes on after it.
func apostrophe(before, after string) bool {
	return strings.Contains(before, ": '") && strings.Contains(after, "'")
}

func semicolon(_, after string) bool { return strings.Contains(after, ";") }

// oneColon reports whether the colon complained of is the line's first.
func oneColon(before, _ string) bool { return !strings.Contains(before, ": ") }

func indented(before, _ string) bool { return strings.TrimSpace(before) == "" }

// syntax finds the slip behind the library's error.
func (r *File) syntax(e *yaml.LoadError) plantext.Fault {
	shown := r.markPlace(e.Mark)
	begun := shown
	if e.ContextMark.Line > 0 {
		begun = r.markPlace(e.ContextMark)
	}
	for _, s := range slips {
		place := shown
		if s.opening {
			place = begun
		}
		if !strings.Contains(e.Message, s.says) || !strings.Contains(e.ContextMsg, s.while) {
			continue
		}
		if s.fits != nil && !s.fits(around(place)) {
			continue
		}
		f := plantext.Fault{Place: place, Problem: s.problem, Remedy: s.remedy}
		if s.indent {
			f.Remedy = r.indentLike(place.Line)
		}
		if line, ok := r.lineSlip(s, place.Line); ok {
			return line
		}
		return f
	}
	return plantext.Fault{Place: shown, Problem: e.Message} // the last slip fits
}

// around splits the line shown at the place.
func around(p plantext.Place) (before, after string) {
	characters := 0
	for at := range p.Source {
		if characters++; characters >= p.Column {
			return p.Source[:at], p.Source[at:]
		}
	}
	return p.Source, ""
}

// markPlace turns the library's mark into a place; one on an empty line or
// past the last is shown at the end of the line before.
func (r *File) markPlace(m yaml.Mark) plantext.Place {
	if m.Line == 0 {
		return r.secondDocument()
	}
	line, column := m.Line, m.Column
	for line > 1 && strings.TrimSpace(r.line(line)) == "" {
		line--
		column = utf8.RuneCountInString(r.line(line)) + 1
	}
	return r.at(line, column)
}

// secondDocument finds the line --- that the library tells no place of.
func (r *File) secondDocument() plantext.Place {
	written := false
	for n, line := range r.Text.Lines() {
		if strings.HasPrefix(line, "---") && written {
			return r.at(n, 1)
		}
		line = strings.TrimSpace(line)
		written = written || line != "" && line[0] != '#'
	}
	return plantext.Place{File: r.Name}
}
