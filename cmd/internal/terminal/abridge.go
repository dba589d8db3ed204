package terminal

import "strings"

// LongestLine is far longer than any line of a message that nobody meant harm
// by; the names and values of the command line are quoted in them.
const LongestLine = 2000

// Abridged cuts the middle out of lines that would fill the screen: what is wrong
// stands at their beginning, and often what to do at their end.
func Abridged(message string) string {
	if len(message) <= LongestLine {
		return message
	}
	lines := strings.Split(message, "\n")
	for i, line := range lines {
		if n := len(line); n > LongestLine {
			const kept = LongestLine / 4
			lines[i] = strings.ToValidUTF8(line[:kept], "") + " ... " + strings.ToValidUTF8(line[n-kept:], "")
		}
	}
	return strings.Join(lines, "\n")
}
