package yamlfile

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/pattern"
	"fencecard/joinery/planfile/keys"
	"fencecard/joinery/plantext"
)

// nameKeys begins a line with a key whose value is a text of the maker's own: a
// kind of cut or joint has a name behind it.
var nameKeys = func() string {
	words := []string{"title", "note", "piece", "bit"}
	for _, k := range joinery.Kinds {
		words = append(append(words, k.Name), k.Also...)
	}
	for _, k := range joint.Kinds {
		words = append(append(words, k.Name), k.Also...)
	}
	return "^(" + strings.Join(words, "|") + "): "
}()

// lineSlips are slips that show in one line, whatever the library makes of
// them. In the words $1 to $3 are parts of the line.
var lineSlips = []struct {
	text    pattern.Pattern
	known   bool // $1 must be a key
	problem string
	remedy  string
}{
	{text: pattern.New(nameKeys + `([^"“”'\[{#][^"“”#]*: [^"“”#]*)$`), problem: "there is a second colon in this line", remedy: `write $1: "$2"`},
	{text: pattern.New(nameKeys + "(([" + "@`%" + `])[^"#]*)$`), problem: "a text that begins with $3 needs quotes round it", remedy: `write $1: "$2"`},
	{text: pattern.New(`^//\s*(.*)$`), problem: "a remark does not begin with // here", remedy: "write # $1"},
	{text: pattern.New(`^[•·–—*]\s*(.*)$`), problem: "a list entry begins with a plain dash", remedy: "write - $1"},
	{text: pattern.New(`^([a-z-]+)$`), known: true, problem: "there is no colon after $1", remedy: "write $1:"},
	{text: pattern.New(`^-([a-z].*)$`), problem: "there is no space after the dash", remedy: "write - $1"},
	{text: pattern.New(`^([a-z-]+):([^\s/].*)$`), known: true, problem: "there is no space after the colon", remedy: "write $1: $2"},
	{text: pattern.New(`^([a-z-]+)\s*=\s*(.*)$`), known: true, problem: "an equals sign stands where a colon belongs", remedy: "write $1: $2"},
	{text: pattern.New(`^([a-z-]+)\s*:?\s+([^:\s].*)$`), known: true, problem: "there is no colon after $1", remedy: "write $1: $2"},
}

// lineSlip looks for a slip in the line shown. A line that does not stand
// straight may belong to a slip in the line above.
func (r *File) lineSlip(s slip, line int) (plantext.Fault, bool) {
	if s.while != "" || s.says == "" {
		return plantext.Fault{}, false
	}
	if f, ok := r.slipIn(line); ok || !s.indent {
		return f, ok
	}
	for line--; line > 0 && strings.TrimSpace(r.line(line)) == ""; {
		line--
	}
	return r.slipIn(line)
}

func (r *File) slipIn(line int) (plantext.Fault, bool) {
	full := r.line(line)
	text := strings.TrimSpace(full)
	if len(text) > 2*LongestNote {
		return plantext.Fault{}, false
	}
	sound := strings.Contains(text, ": ") || strings.HasSuffix(text, ":")
	inner := strings.TrimSpace(strings.TrimPrefix(text, "- "))
	for _, s := range lineSlips {
		m := s.text.FindStringSubmatchIndex(inner)
		if m == nil {
			continue
		}
		expand := func(template string) string { return s.text.Expand(template, inner, m) }
		if s.known && (sound || !keys.IsKey(expand("$1"))) {
			continue
		}
		at := column(full, strings.Index(full, inner))
		return plantext.Fault{Place: r.at(line, at), Problem: expand(s.problem), Remedy: Short(expand(s.remedy))}, true
	}
	return plantext.Fault{}, false
}

// mostLinesBack bounds the search for a line to indent like.
const mostLinesBack = 200

// indentLike is the remedy for a badly indented line: as far as the nearest
// step among the lines above, a dash like a dash and a key like a key.
func (r *File) indentLike(line int) string {
	dash, key := steps(r.line(line))
	best, at, away := -1, 0, 0
	for n := line - 1; n > 0 && n >= line-mostLinesBack; n-- {
		text := strings.TrimSpace(r.line(n))
		if text == "" || text[0] == '#' {
			continue
		}
		have, want := key, 0
		thereDash, thereKey := steps(r.line(n))
		switch {
		case dash < 0:
			want = thereKey
		case thereDash < 0:
			continue
		default:
			have, want = dash, thereDash
		}
		if far := max(want-have, have-want); best < 0 || far < away {
			best, at, away = want, n, far
		}
	}
	if best < 0 {
		return "begin it at the margin"
	}
	what := "line"
	if dash >= 0 {
		what = "the dash in line"
	}
	if best == 0 {
		return fmt.Sprintf("begin it at the margin, like %s %d", what, at)
	}
	return fmt.Sprintf("begin it after %d spaces, like %s %d, if it belongs beside that one", best, what, at)
}

// steps returns how many characters stand before a line's dash, -1 where it
// has none, and before its key.
func steps(line string) (dash, key int) {
	text := strings.TrimLeft(line, " ")
	key = len(line) - len(text)
	rest, found := strings.CutPrefix(text, "-")
	if !found {
		return -1, key
	}
	return key, key + 1 + len(rest) - len(strings.TrimLeft(rest, " "))
}
