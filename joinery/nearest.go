package joinery

import (
	"strings"
	"unicode/utf8"
)

// mostNames bounds the work of one search among names.
const mostNames = 1000

// Nearest returns the name that a mistyped word was probably meant to be, or
// "" when none is near. A slip is a letter left out, added, changed or swapped
// with its neighbour; a third of the letters may be slips, three at the most.
// Capitals do not count. It looks at the first 1,000 names.
func Nearest(word string, names []string) string {
	typed := strings.ToLower(strings.TrimSpace(word))
	letters := utf8.RuneCountInString(typed)
	best, fewest := "", min(3, max(1, letters/3))+1
	for _, name := range names[:min(len(names), mostNames)] {
		if more := utf8.RuneCountInString(name) - letters; more >= fewest || -more >= fewest {
			continue
		}
		// A word of which no letter is right is not near.
		if slips := editDistance(typed, strings.ToLower(name)); slips < min(fewest, letters) {
			best, fewest = name, slips
		}
	}
	return best
}
