package planfile

import "strings"

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
