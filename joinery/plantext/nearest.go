package plantext

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
		if slips := Slips(typed, strings.ToLower(name)); slips < min(fewest, letters) {
			best, fewest = name, slips
		}
	}
	return best
}

// Slips counts the letters to put in, leave out, change or swap with
// their neighbour to make one word of the other (Damerau's distance,
// restricted form).
func Slips(a, b string) int {
	x, y := []rune(a), []rune(b)
	before, last, row := make([]int, len(y)+1), make([]int, len(y)+1), make([]int, len(y)+1)
	for j := range last {
		last[j] = j
	}
	for i := range x {
		row[0] = i + 1
		for j := range y {
			change := 1
			if x[i] == y[j] {
				change = 0
			}
			row[j+1] = min(last[j+1]+1, row[j]+1, last[j]+change)
			if i > 0 && j > 0 && x[i] == y[j-1] && x[i-1] == y[j] {
				row[j+1] = min(row[j+1], before[j-1]+1)
			}
		}
		before, last, row = last, row, before
	}
	return last[len(y)]
}
