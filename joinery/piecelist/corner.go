package piecelist

import (
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"fencecard/joinery"
)

// Copy is one piece of the plan that a row of the list comes to.
type Copy struct {
	Name   string
	Of     string              // the piece that it mirrors, or ""
	Across []joinery.Dimension // what it is mirrored across; nil where it mirrors none
}

// sideWords are the words for a side in names, by side; the first is the one
// that is written.
var sideWords = map[joinery.Side][]string{
	joinery.Left: {"left"}, joinery.Right: {"right"},
	joinery.Front: {"front"}, joinery.Back: {"back", "rear", "hind"},
}

// germanSides are the same in German, where they stand behind the name.
var germanSides = map[joinery.Side][]string{
	joinery.Left: {"links", "linke", "linker", "linkes"}, joinery.Right: {"rechts", "rechte", "rechter", "rechtes"},
	joinery.Front: {"vorne", "vorn"}, joinery.Back: {"hinten"},
}

// mirrorings are the sides of each of the pieces that are not alike, in order.
var mirrorings = map[As][][]joinery.Side{
	PairLeftRight: {{joinery.Left}, {joinery.Right}},
	PairFrontBack: {{joinery.Front}, {joinery.Back}},
	Corners: {{joinery.Front, joinery.Left}, {joinery.Front, joinery.Right},
		{joinery.Back, joinery.Left}, {joinery.Back, joinery.Right}},
}

// copies names the pieces that a row comes to, each by its side or corner.
func (p *Piece) copies(name string, german bool) []Copy {
	sets := mirrorings[p.As]
	if sets == nil {
		return []Copy{{Name: name}}
	}
	name = one(name)
	var all []Copy
	for _, sides := range sets {
		c := Copy{Name: sided(name, sides, german)}
		for i, s := range sides {
			if s != sets[0][i] {
				c.Across = append(c.Across, s.Dimension())
			}
		}
		if slices.Sort(c.Across); c.Across != nil {
			c.Of = all[0].Name
		}
		all = append(all, c)
	}
	return all
}

// sided puts sides into a name: in place of a word for one of that dimension,
// or else before the name, in German behind it. Front and back come before left
// and right.
func sided(name string, sides []joinery.Side, german bool) string {
	words, table := strings.Fields(name), sideWords
	if german {
		table = germanSides
	}
	var free []string
	for _, s := range sides {
		at := slices.IndexFunc(words, func(w string) bool { return isSide(w, table, s, s.Opposite()) })
		switch {
		case at < 0:
			free = append(free, table[s][0])
		case !isSide(words[at], table, s): // a hind leg stays a hind leg
			words[at] = like(words[at], table[s][0])
		}
	}
	at := func(sides ...joinery.Side) int {
		return slices.IndexFunc(words, func(w string) bool { return isSide(w, table, sides...) })
	}
	frontBack, leftRight := at(joinery.Front, joinery.Back), at(joinery.Left, joinery.Right)
	switch {
	case len(free) == 0:
	case frontBack >= 0:
		words = slices.Insert(words, frontBack+1, free...)
	case leftRight >= 0:
		words = slices.Insert(words, leftRight, free...)
	case german:
		words = append(words, free...)
	default:
		words = append(free, small(words)...)
	}
	return strings.Join(words, " ")
}

func isSide(word string, table map[joinery.Side][]string, sides ...joinery.Side) bool {
	word = strings.Trim(strings.ToLower(word), ",.()")
	for _, s := range sides {
		if slices.Contains(table[s], word) {
			return true
		}
	}
	return false
}

// like writes a word with the marks and capitals of the one it stands for.
func like(old, word string) string {
	bare := strings.Trim(old, ",.()")
	switch {
	case len(bare) > 1 && bare == strings.ToUpper(bare):
		word = strings.ToUpper(word)
	case capital(bare):
		word = strings.ToUpper(word[:1]) + word[1:]
	}
	return strings.Replace(old, bare, word, 1)
}

// capital reports whether a text begins with a capital.
func capital(text string) bool {
	first, _ := utf8.DecodeRuneInString(text)
	return unicode.IsUpper(first)
}

// small takes the capitals off words that have them only at their beginning, or
// off all of them where the name has no small letter: a side's word stands in
// front of them now.
func small(words []string) []string {
	all := strings.Join(words, " ")
	shouted := all == strings.ToUpper(all)
	out := make([]string, len(words))
	for i, w := range words {
		runes := []rune(w)
		if shouted || len(runes) > 1 && strings.ToLower(string(runes[1:])) == string(runes[1:]) {
			w = strings.ToLower(w)
		}
		out[i] = w
	}
	return out
}

// one makes the name of several that of one: legs, leg.
func one(name string) string {
	words := strings.Fields(name)
	for i, w := range words {
		single, ok := kinds().singular[strings.ToLower(w)]
		if !ok {
			continue
		}
		if capital(w) {
			r := []rune(single)
			single = string(unicode.ToUpper(r[0])) + string(r[1:])
		}
		if w == strings.ToUpper(w) {
			single = strings.ToUpper(single)
		}
		words[i] = single
	}
	return strings.Join(words, " ")
}

// sideIn is the first word of a name that is a side's, in small letters, or "".
func sideIn(name string) string {
	for _, w := range strings.Fields(name) {
		for _, table := range []map[joinery.Side][]string{sideWords, germanSides} {
			if isSide(w, table, joinery.Left, joinery.Right, joinery.Front, joinery.Back) {
				return strings.Trim(strings.ToLower(w), ",.()")
			}
		}
	}
	return ""
}

func isFrontBack(word string) bool {
	return isSide(word, sideWords, joinery.Front, joinery.Back) || isSide(word, germanSides, joinery.Front, joinery.Back)
}

// otherSide is the name with its side's word changed to the other side's.
func otherSide(name string) string {
	words := strings.Fields(name)
	for i, w := range words {
		for _, table := range []map[joinery.Side][]string{sideWords, germanSides} {
			for _, s := range []joinery.Side{joinery.Left, joinery.Right, joinery.Front, joinery.Back} {
				if isSide(w, table, s) {
					words[i] = like(w, table[s.Opposite()][0])
					return strings.Join(words, " ")
				}
			}
		}
	}
	return name
}

// nameKey is what two names have in common that a maker would take for one.
func nameKey(name string) string { return strings.ToLower(strings.Join(strings.Fields(name), " ")) }
