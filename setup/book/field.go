package book

import "strings"

// field is one line "key: value".
type field struct {
	key   string // in lower case
	value string
	line  int // index from 0
	at    int // the byte in the line where the value begins
}

// formerRun is what books kept before call a run. A card is all runs of one piece.
const formerRun = "card"

// fieldOf reads a line as a field.
func (t *text) fieldOf(line int) (field, bool) {
	source := t.line(line)
	key, value, ok := strings.Cut(source, ":")
	key = strings.ToLower(strings.TrimSpace(key))
	if !ok || key == "" {
		return field{}, false
	}
	if key == formerRun {
		key = keyRun
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
