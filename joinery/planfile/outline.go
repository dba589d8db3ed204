package planfile

import (
	"iter"
	"strings"
	"unicode/utf8"
)

// stretch is a part of the text, from one offset to before another.
type stretch struct{ from, to int }

// listing is a list that is read some entries at a time.
type listing struct {
	key   int     // where its key begins
	inner stretch // all its entries; whole lines, or what stands between the brackets
	flow  bool    // in brackets
	dash  int     // how far its dashes are indented, where it is not in brackets
}

// outline finds the lists under a key in the mapping that a stretch of the text
// holds: the file, or one entry of a list, whose dash comes first.
func outline(text string, in stretch, key string) []listing {
	text = text[:in.to]
	at := in.from
	for {
		if at = word(text, at); at < len(text) && strings.HasPrefix(text[at:], "---") && blankAt(text, at+3) {
			at = nextLine(text, at)
			continue
		}
		if !dashAt(text, at) {
			break
		}
		at = pastBlanks(text, at+1)
	}
	switch {
	case at >= len(text):
		return nil
	case text[at] == '{':
		return flowLists(text, at+1, key)
	}
	return blockLists(text, at, key)
}

// blockLists finds the lists under a key in the mapping of block style whose
// first key begins at the offset.
func blockLists(text string, at int, key string) []listing {
	var found []listing
	margin := at - lineStart(text, at)
	for at < len(text) && at-lineStart(text, at) >= margin {
		next := below(text, at)
		if at-lineStart(text, at) == margin {
			if l, ok := blockList(text, at, margin, key); ok {
				found = append(found, l)
				next = max(next, l.inner.to)
			}
		}
		at = word(text, next)
	}
	return found
}

// blockList returns the list under the key at the offset, if that is the key
// and a list stands under it.
func blockList(text string, at, margin int, key string) (listing, bool) {
	after := colon(text, at)
	if after < 0 || unquote(text[at:after]) != key {
		return listing{}, false
	}
	value := pastBlanks(text, after+1)
	if value < len(text) && text[value] == '[' {
		return listing{key: at, flow: true, inner: stretch{value + 1, flowEnd(text, value+1, "]")}}, true
	}
	if value < len(text) && text[value] != '\n' && text[value] != '#' {
		return listing{}, false
	}
	first := word(text, nextLine(text, value))
	if !dashAt(text, first) {
		return listing{}, false
	}
	l := listing{key: at, dash: first - lineStart(text, first)}
	if l.dash < margin {
		return listing{}, false
	}
	l.inner.from = lineStart(text, first)
	for first < len(text) {
		indent := first - lineStart(text, first)
		if indent < margin || indent == margin && !(l.dash == margin && dashAt(text, first)) {
			break
		}
		first = word(text, below(text, first))
	}
	l.inner.to = len(text)
	if first < len(text) {
		l.inner.to = lineStart(text, first)
	}
	return l, true
}

// flowLists finds the lists under a key in the mapping in braces that begins at
// the offset.
func flowLists(text string, at int, key string) []listing {
	var found []listing
	for at < len(text) {
		end := flowEnd(text, at, ",}")
		from := end - len(strings.TrimLeft(text[at:end], " \t\n"))
		after := flowEnd(text[:end], from, ":")
		if after < end && unquote(text[from:after]) == key {
			value := end - len(strings.TrimLeft(text[after+1:end], " \t\n"))
			if value < end && text[value] == '[' {
				found = append(found, listing{key: from, flow: true, inner: stretch{value + 1, flowEnd(text[:end], value+1, "]")}})
			}
		}
		if end == len(text) || text[end] == '}' {
			break
		}
		at = end + 1
	}
	return found
}

// unquote is a key as a plain word; what is not as simple is no key of ours.
func unquote(key string) string { return strings.Trim(strings.TrimSpace(key), `"'`) }

// entries gives the stretches of a list's entries one after another.
func (l listing) entries(text string) iter.Seq[stretch] {
	text = text[:l.inner.to]
	end := func(at int) int { return min(flowEnd(text, at, ",")+1, len(text)) }
	if !l.flow {
		end = func(at int) int { return l.nextDash(text, at) }
	}
	return func(yield func(stretch) bool) {
		for at := l.inner.from; at < len(text); {
			next := end(at)
			if !yield(stretch{at, next}) {
				return
			}
			at = next
		}
	}
}

// nextDash is where the line of the next entry begins, behind the one at the
// offset.
func (l listing) nextDash(text string, at int) int {
	first := word(text, at)
	for {
		if first = word(text, below(text, first)); first >= len(text) {
			return len(text)
		}
		if at := lineStart(text, first); first-at == l.dash && dashAt(text, first) {
			return at
		}
	}
}

// batches gives stretches of several entries each, as many as are no heavier
// than the most; a heavier entry comes alone.
func (l listing) batches(text string, most int) iter.Seq[stretch] {
	return func(yield func(stretch) bool) {
		batch, weight := stretch{l.inner.from, l.inner.from}, 0
		for entry := range l.entries(text) {
			own, _ := weigh(text[entry.from:entry.to], most)
			if weight > 0 && weight+own > most {
				if !yield(batch) {
					return
				}
				batch, weight = stretch{entry.from, entry.from}, 0
			}
			batch.to = entry.to
			weight += own
		}
		if batch.to > batch.from {
			yield(batch)
		}
	}
}

// blanked is a stretch of the text with the lists in it emptied, and every other
// character at its line and column.
func blanked(text string, in stretch, lists []listing) string {
	if len(lists) == 0 {
		return text[in.from:in.to]
	}
	var b strings.Builder
	for _, l := range lists {
		b.WriteString(text[in.from:l.inner.from])
		inner := text[l.inner.from:l.inner.to]
		b.WriteString(strings.Repeat("\n", strings.Count(inner, "\n")))
		last := inner[strings.LastIndexByte(inner, '\n')+1:]
		b.WriteString(strings.Repeat(" ", utf8.RuneCountInString(last)))
		in.from = l.inner.to
	}
	b.WriteString(text[in.from:in.to])
	return b.String()
}

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
