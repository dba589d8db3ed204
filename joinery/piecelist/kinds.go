package piecelist

import (
	_ "embed"
	"slices"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery/measure"
)

//go:embed kinds.tsv
var kindTable string

// kind is a kind of piece, known by words of its name, and what is usual for it.
// The zero value is none that is known.
type kind struct {
	what      string // "a leg"
	lies      Orientation
	two, four As
	thickest  measure.Length // a thicker one may be something else; 0 for no bound
}

// phrase is the words by which a kind is known.
type phrase struct {
	words []string
	kind  kind
}

// kindWords are the embedded table: the phrases, and the singular of every word
// that is a plural.
type kindWords struct {
	phrases  []phrase
	singular map[string]string
}

var kinds = sync.OnceValue(func() kindWords {
	all := kindWords{singular: map[string]string{}}
	for cells := range tableRows(kindTable) {
		lies, _ := parseOrientation(cells[2], false)
		two, _ := parseAs(cells[3])
		four, _ := parseAs(cells[4])
		k := kind{what: cells[1], lies: lies, two: two, four: four}
		if len(cells) > 5 {
			k.thickest, _ = measure.ParseLength(cells[5], measure.Inches)
		}
		for _, name := range strings.Split(cells[0], ", ") {
			single, plural, several := strings.Cut(name, "/")
			all.phrases = append(all.phrases, phrase{strings.Fields(single), k})
			if several {
				all.phrases = append(all.phrases, phrase{strings.Fields(plural), k})
				all.singular[lastWord(plural)] = lastWord(single)
			}
		}
	}
	return all
})

func lastWord(text string) string { return text[strings.LastIndexByte(text, ' ')+1:] }

// nameWords are the words of a name in small letters.
func nameWords(name string) []string {
	return strings.FieldsFunc(strings.ToLower(name), func(c rune) bool { return !unicode.IsLetter(c) })
}

// kindNamed finds the kind of a piece by its name and the heading above it. The
// word that says what it is must stand in the name itself: a slat below the
// heading "table top" is a slat.
func kindNamed(name, heading string, german bool) kind {
	above := nameWords(heading)
	words := append(above, nameWords(name)...)
	if len(words) > 12 {
		return kind{}
	}
	best, bestScore := kind{}, 0
	for _, ph := range kinds().phrases {
		at, letters := -1, 0
		for _, want := range ph.words {
			at = lastIndex(words, want, german)
			if at < 0 {
				break
			}
			letters += utf8.RuneCountInString(want)
		}
		if at < len(above) {
			continue
		}
		score := len(ph.words)*10_000 + at*100 + letters
		if len(ph.words) == 1 && places[ph.words[0]] {
			score -= 10_000
		}
		if score > bestScore {
			best, bestScore = ph.kind, score
		}
	}
	return best
}

// places are kinds of pieces whose names also say where another piece is: in
// "leg, back" or "rail, top" the other one counts.
var places = map[string]bool{"front": true, "back": true, "side": true, "end": true, "top": true, "bottom": true, "seat": true}

// lastIndex finds a word, or in German one that ends in it.
func lastIndex(words []string, want string, german bool) int {
	for i, w := range slices.Backward(words) {
		if w == want || german && len(want) > 3 && strings.HasSuffix(w, want) {
			return i
		}
	}
	return -1
}
