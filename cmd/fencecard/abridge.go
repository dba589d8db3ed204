package main

import "strings"

// longestLine is far longer than any line of a message that nobody meant harm
// by; the names and values of the command line are quoted in them.
const longestLine = 2000

// abridged cuts the middle out of lines that would fill the screen: what is wrong
// stands at their beginning, and often what to do at their end.
func abridged(message string) string {
	if len(message) <= longestLine {
		return message
	}
	lines := strings.Split(message, "\n")
	for i, line := range lines {
		if n := len(line); n > longestLine {
			const kept = longestLine / 4
			lines[i] = strings.ToValidUTF8(line[:kept], "") + " ... " + strings.ToValidUTF8(line[n-kept:], "")
		}
	}
	return strings.Join(lines, "\n")
}
