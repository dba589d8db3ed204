package yamlfile

import (
	"bytes"
	"strings"
	"unicode/utf8"

	"go.yaml.in/yaml/v4"
)

// surveyor finds where values begin and end in the bytes of a file. The YAML
// library tells only the line and column of their beginnings, so ends are
// found from what was read: a text is as long as what it says.
type surveyor struct {
	data []byte
	// The place it has come to: values are asked for in their order, so that a
	// long line is walked once.
	line, column, at int
}

func newSurveyor(data []byte) *surveyor {
	s := &surveyor{data: data, line: 1, column: 1}
	if bytes.HasPrefix(data, []byte("\ufeff")) {
		s.at = len("\ufeff")
	}
	return s
}

// OffsetIn is where in a file's own bytes a node begins.
func OffsetIn(data []byte, n *yaml.Node) int { return newSurveyor(data).offset(n) }

// offset is where a node begins.
func (s *surveyor) offset(n *yaml.Node) int {
	for s.line < n.Line && s.at < len(s.data) {
		end := bytes.IndexAny(s.data[s.at:], "\r\n")
		if end < 0 {
			s.at = len(s.data)
			break
		}
		s.at += end + 1
		if s.data[s.at-1] == '\r' && s.at < len(s.data) && s.data[s.at] == '\n' {
			s.at++
		}
		s.line, s.column = s.line+1, 1
	}
	for s.column < n.Column && s.at < len(s.data) {
		_, size := utf8.DecodeRune(s.data[s.at:])
		s.at, s.column = s.at+size, s.column+1
	}
	return s.at
}

func (s *surveyor) value(n *yaml.Node) *Written {
	w := written(n)
	w.From = s.offset(n)
	switch w.Kind {
	case WrittenKeys:
		w.To = s.pairs(w, n)
	case WrittenList:
		w.To = s.items(w, n)
	default:
		w.To = s.text(w)
	}
	if w.Flow {
		w.To = s.closed(w)
	}
	return w
}

// pairs surveys keys and values and returns where the last of them ends.
func (s *surveyor) pairs(w *Written, n *yaml.Node) int {
	end := w.From
	for i := 0; i+1 < len(n.Content); i += 2 {
		p := WrittenPair{Key: s.value(n.Content[i])}
		end = p.Key.To
		if colon := s.skip(end, " \t"); colon < len(s.data) && s.data[colon] == ':' {
			p.Colon = colon + 1
			end = p.Colon
		}
		if Null(n.Content[i+1]) {
			p.Value = &Written{From: end, To: end}
		} else {
			p.Value = s.value(n.Content[i+1])
			end = p.Value.To
		}
		w.Pairs = append(w.Pairs, p)
	}
	return end
}

// items surveys the entries of a list and returns where the last of them ends.
func (s *surveyor) items(w *Written, n *yaml.Node) int {
	end := w.From
	for _, inner := range n.Content {
		dash := end
		if !w.Flow {
			dash = s.next(end)
		}
		item := WrittenItem{s.value(inner), dash}
		if w.Flow {
			item.Dash = item.From
		}
		end = max(end+1, item.To)
		w.Items = append(w.Items, item)
	}
	return end
}

// skip passes over some letters.
func (s *surveyor) skip(at int, letters string) int {
	for at < len(s.data) && strings.IndexByte(letters, s.data[at]) >= 0 {
		at++
	}
	return at
}

// next is the first byte that is neither blank nor part of a remark.
func (s *surveyor) next(at int) int {
	for {
		at = s.skip(at, " \t\r\n")
		if at == len(s.data) || s.data[at] != '#' {
			return at
		}
		end := bytes.IndexAny(s.data[at:], "\r\n")
		if end < 0 {
			return len(s.data)
		}
		at += end
	}
}

// closed is the end of what stands in braces or brackets. A pair in brackets
// may have no braces of its own.
func (s *surveyor) closed(w *Written) int {
	if w.From == len(s.data) || s.data[w.From] != '{' && s.data[w.From] != '[' {
		return w.To
	}
	at := s.next(max(w.To, w.From+1))
	if at < len(s.data) && s.data[at] == ',' {
		at = s.next(at + 1)
	}
	return min(at+1, len(s.data))
}

// text is the end of a text.
func (s *surveyor) text(w *Written) int {
	if w.Kind == WrittenNothing || w.From == len(s.data) {
		return w.From
	}
	switch first := s.data[w.From]; first {
	case '"', '\'':
		w.Quote = first
		return s.quoted(w.From, first)
	case '|', '>':
		w.Quote = first
		return s.block(w)
	}
	return s.plain(w)
}

// quoted is the end of a text in quotes.
func (s *surveyor) quoted(from int, quote byte) int {
	for at := from + 1; at < len(s.data); at++ {
		switch {
		case s.data[at] == '\\' && quote == '"':
			at++
		case s.data[at] != quote:
		case quote == '\'' && at+1 < len(s.data) && s.data[at+1] == quote:
			at++
		default:
			return at + 1
		}
	}
	return len(s.data)
}

// plain is the end of a text without quotes, which may go on over several lines:
// it stands there letter by letter, with more white between the words.
func (s *surveyor) plain(w *Written) int {
	const white = " \t\r\n"
	at, said := w.From, w.Text
	for said != "" && at < len(s.data) {
		switch {
		case strings.IndexByte(white, said[0]) >= 0:
			said = strings.TrimLeft(said, white)
			at = s.skip(at, white)
		case said[0] != s.data[at]:
			return at
		default:
			said, at = said[1:], at+1
		}
	}
	return at
}

// block is the end of a text that begins with | or > and stands on the lines
// below, further in.
func (s *surveyor) block(w *Written) int {
	lineEnd := func(at int) int {
		if end := bytes.IndexAny(s.data[at:], "\r\n"); end >= 0 {
			return at + end
		}
		return len(s.data)
	}
	end := lineEnd(w.From)
	if strings.TrimSpace(w.Text) == "" {
		return end
	}
	indent := -1
	for at := end; at < len(s.data); {
		at = s.skip(at, "\r\n")
		word := s.skip(at, " ")
		stop := lineEnd(word)
		if stop > word {
			if indent < 0 {
				indent = word - at
			}
			if word-at < indent {
				break
			}
			end = stop
		}
		at = stop
	}
	return end
}

// LineEnd returns how the file ends its lines.
func LineEnd(data []byte) string {
	switch {
	case bytes.Contains(data, []byte("\r\n")):
		return "\r\n"
	case bytes.ContainsRune(data, '\r'):
		return "\r"
	}
	return "\n"
}
