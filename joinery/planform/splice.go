package planform

import (
	"bytes"
	"cmp"
	"slices"
	"strings"
)

// splices are changes to a text, all in the places of the text as it was.
type splices struct {
	data []byte
	end  string // how its lines end
	made []splice
}

// splice exchanges the bytes from one place up to another.
type splice struct {
	from, to int
	by       string
}

func splicesOf(data []byte) *splices {
	end := "\n"
	switch {
	case bytes.Contains(data, []byte("\r\n")):
		end = "\r\n"
	case bytes.ContainsRune(data, '\r'):
		end = "\r"
	}
	return &splices{data: data, end: end}
}

// exchange puts a text in the place of some bytes; its lines end in "\n".
func (s *splices) exchange(from, to int, by string) {
	s.made = append(s.made, splice{from, to, strings.ReplaceAll(by, "\n", s.end)})
}

// insertLines puts whole lines before the line that begins at a place. At the end
// of a text whose last line has no end, they get one before them.
func (s *splices) insertLines(at int, lines string) {
	if at == len(s.data) && at > 0 && !isEnd(s.data[at-1]) && string(s.data) != "\ufeff" {
		lines = "\n" + strings.TrimSuffix(lines, "\n")
	}
	s.exchange(at, at, lines)
}

func isEnd(b byte) bool { return b == '\n' || b == '\r' }

// result is the text with its changes. Of two that overlap, the first that
// begins counts.
func (s *splices) result() []byte {
	slices.SortStableFunc(s.made, func(a, b splice) int { return cmp.Or(a.from-b.from, a.to-b.to) })
	var out []byte
	at := 0
	for _, one := range s.made {
		if one.from < at {
			continue
		}
		out = append(out, s.data[at:one.from]...)
		if one.from == len(s.data) && one.from > 0 && !isEnd(s.data[one.from-1]) && len(out) > 0 && isEnd(out[len(out)-1]) {
			// The line that had no end was taken out.
			one.by = strings.TrimPrefix(one.by, s.end)
		}
		out = append(out, one.by...)
		at = one.to
	}
	return append(out, s.data[at:]...)
}

// lineStart is where the line of a place begins.
func (s *splices) lineStart(at int) int {
	for at > 0 && !isEnd(s.data[at-1]) {
		at--
	}
	if at == 0 && bytes.HasPrefix(s.data, []byte("\ufeff")) {
		return len("\ufeff")
	}
	return at
}

// nextLine is where the line behind that of a place begins.
func (s *splices) nextLine(at int) int {
	for at < len(s.data) && !isEnd(s.data[at]) {
		at++
	}
	if at < len(s.data) && s.data[at] == '\r' && at+1 < len(s.data) && s.data[at+1] == '\n' {
		at++
	}
	return min(at+1, len(s.data))
}

// lineAt is the line that begins at a place, without its end.
func (s *splices) lineAt(at int) string {
	end := at
	for end < len(s.data) && !isEnd(s.data[end]) {
		end++
	}
	return string(s.data[at:end])
}

// behind is the line behind a value, and behind remarks below it that stand further in than
// its key.
func (s *splices) behind(to, column int) int {
	at := s.nextLine(to)
	for at < len(s.data) {
		line := s.lineAt(at)
		word := strings.TrimLeft(line, " ")
		if !strings.HasPrefix(word, "#") || len(line)-len(word) <= column {
			break
		}
		at = s.nextLine(at)
	}
	return at
}

// lineBefore is where the line before the one that begins at a place begins; at the
// first line that is the place itself.
func (s *splices) lineBefore(at int) int {
	if at == 0 || !isEnd(s.data[at-1]) {
		return at
	}
	at--
	if s.data[at] == '\n' && at > 0 && s.data[at-1] == '\r' {
		at--
	}
	return s.lineStart(at)
}

// blankAt reports whether the line that begins at a place is there and blank.
func (s *splices) blankAt(at int) bool {
	return at < len(s.data) && strings.TrimSpace(s.lineAt(at)) == ""
}

// firstInLine reports whether only blanks stand before a place in its line.
func (s *splices) firstInLine(at int) bool {
	return strings.TrimLeft(string(s.data[s.lineStart(at):at]), " ") == ""
}

// blankBetween reports whether a blank line stands between two places.
func (s *splices) blankBetween(from, to int) bool {
	for at := s.nextLine(from); at < to; at = s.nextLine(at) {
		if strings.TrimSpace(s.lineAt(at)) == "" {
			return true
		}
	}
	return false
}
