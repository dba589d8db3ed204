package plantext

import (
	"strings"
	"unicode/utf8"
)

// List joins words for a message: "a, b and c", the last word being "and".
func List(words []string, last string) string {
	if len(words) < 2 {
		return strings.Join(words, "")
	}
	end := len(words) - 1
	return strings.Join(words[:end], ", ") + " " + last + " " + words[end]
}

// Brief cuts a text that a message quotes after so many characters, lest it fill
// the screen.
func Brief(text string, most int) string {
	if len(text) <= most || utf8.RuneCountInString(text) <= most {
		return text
	}
	for at := range text {
		if most == 0 {
			return text[:at] + "..."
		}
		most--
	}
	return text
}
