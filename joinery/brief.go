package joinery

import "unicode/utf8"

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
