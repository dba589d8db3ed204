package planfile

import "strings"

// The functions here step over YAML without reading it. They know dashes, keys,
// quotes, brackets, remarks and block texts just well enough to tell where an
// entry of a list ends; the library reads what lies between. All take and
// return offsets into the text.

// endOfLine is the offset of the end of the line, or of the text.
func endOfLine(text string, at int) int {
	if end := strings.IndexByte(text[at:], '\n'); end >= 0 {
		return at + end
	}
	return len(text)
}

// nextLine is where the line below begins.
func nextLine(text string, at int) int { return min(endOfLine(text, at)+1, len(text)) }

// lineStart is where the line begins.
func lineStart(text string, at int) int { return strings.LastIndexByte(text[:at], '\n') + 1 }

func blankAt(text string, at int) bool {
	return at >= len(text) || text[at] == ' ' || text[at] == '\t' || text[at] == '\n'
}

// pastBlanks steps over blanks within the line.
func pastBlanks(text string, at int) int {
	for at < len(text) && (text[at] == ' ' || text[at] == '\t') {
		at++
	}
	return at
}

// word is the first character of a line that is neither empty nor a remark, at
// or below the line that begins at the offset; the text's length where none is.
func word(text string, at int) int {
	for at < len(text) {
		first := pastBlanks(text, at)
		if first < len(text) && text[first] != '\n' && text[first] != '#' {
			return first
		}
		at = nextLine(text, first)
	}
	return len(text)
}

// dashAt reports whether a list entry begins there.
func dashAt(text string, at int) bool {
	return at < len(text) && text[at] == '-' && blankAt(text, at+1)
}

// remarkAt reports whether a remark begins there.
func remarkAt(text string, at int) bool {
	return text[at] == '#' && (at == 0 || blankAt(text, at-1))
}

// quoteEnd is the offset behind the quotation mark that ends the text begun by
// the one there.
func quoteEnd(text string, at int) int {
	mark := text[at]
	for at++; at < len(text); at++ {
		switch {
		case text[at] == '\\' && mark == '"':
			at++
		case text[at] != mark:
		case mark == '\'' && at+1 < len(text) && text[at+1] == mark:
			at++
		default:
			return at + 1
		}
	}
	return len(text)
}

// flowEnd is the offset of the first of some characters that stands inside no
// further brackets, braces or quotes: the end of an entry where they are a comma
// and a bracket.
func flowEnd(text string, at int, ends string) int {
	depth := 0
	begins := true  // a text may begin here, so that a quotation mark is one
	quoted := false // the last text stood in quotes, so that a colon needs no blank
	for at < len(text) {
		c := text[at]
		switch {
		case depth == 0 && strings.IndexByte(ends, c) >= 0:
			return at
		case blankAt(text, at):
		case remarkAt(text, at):
			at = endOfLine(text, at)
			continue
		case begins && (c == '"' || c == '\''):
			at = quoteEnd(text, at)
			begins, quoted = false, true
			continue
		case c == '[' || c == '{':
			depth++
			begins, quoted = true, false
		case c == ']' || c == '}':
			depth--
			begins, quoted = false, true
		case c == ',':
			begins, quoted = true, false
		case c == ':':
			begins = quoted || blankAt(text, at+1) || strings.IndexByte(",[]{}", text[at+1]) >= 0
			quoted = false
		default:
			begins, quoted = false, false
		}
		at++
	}
	return at
}

// colon is the offset of the colon behind the key that begins there, or -1 where
// the line has none.
func colon(text string, at int) int {
	end := endOfLine(text, at)
	switch {
	case at == end:
		return -1
	case text[at] == '"' || text[at] == '\'':
		at = pastBlanks(text, quoteEnd(text, at))
	case text[at] == '[' || text[at] == '{':
		at = pastBlanks(text, flowEnd(text, at+1, "]}")+1)
	default:
		for at < end && !(text[at] == ':' && blankAt(text, at+1)) {
			if remarkAt(text, at) {
				return -1
			}
			at++
		}
	}
	if at < len(text) && text[at] == ':' {
		return at
	}
	return -1
}

// below is where the line begins that stands below an entry, key or value of
// block style and what it holds open: quotes, brackets, a block text.
func below(text string, at int) int {
	for dashAt(text, at) {
		at = pastBlanks(text, at+1)
	}
	margin := at - lineStart(text, at)
	if after := colon(text, at); after >= 0 {
		at = pastBlanks(text, after+1)
	}
	switch {
	case at >= len(text):
	case text[at] == '"' || text[at] == '\'':
		at = quoteEnd(text, at)
	case text[at] == '[' || text[at] == '{':
		at = flowEnd(text, at+1, "]}")
	case text[at] == '|' || text[at] == '>':
		return blockTextEnd(text, nextLine(text, at), margin)
	}
	return nextLine(text, min(at, len(text)))
}

// blockTextEnd is where the line begins that ends a text begun by | or >: the
// first that is indented no further than the margin.
func blockTextEnd(text string, at, margin int) int {
	for at < len(text) {
		first := pastBlanks(text, at)
		if first < len(text) && text[first] != '\n' && first-at <= margin {
			return at
		}
		at = nextLine(text, at)
	}
	return at
}
