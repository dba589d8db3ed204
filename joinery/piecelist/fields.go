package piecelist

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"fencecard/joinery/pattern"
	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
)

// Field is what a column of a list holds.
type Field uint8

// The fields of a list. A column of the field Skip is left out, though its
// cells stand in the remark beside the piece.
const (
	NoField Field = iota
	Name
	Count
	Length
	Width
	Thickness
	Size // several lengths in one cell: 26 x 1 1/2 x 3/4
	Wood
	Note
	Lies // which way the piece lies in the finished work
	Made // alike, or mirrored
	Skip
)

var fieldNames = [...]string{"", "name", "count", "length", "width", "thickness", "size", "wood", "note", "orientation", "pairs", "skip"}

// String gives the field's name, such as "length".
func (f Field) String() string { return fieldNames[f] }

// FieldNames lists the fields in the words of [ParseField].
func FieldNames() []string { return slices.Clone(fieldNames[1:]) }

// ParseField returns the field of that name, or of a head that stands for it in
// either language: "long" is a length.
func ParseField(word string) (Field, bool) {
	word = headKey(word)
	for f := Name; f <= Skip; f++ {
		if f.String() == word {
			return f, true
		}
	}
	found := headWords()[word]
	if len(found) == 0 {
		return NoField, false
	}
	return found[0].field, true
}

//go:embed heads.tsv
var headTable string

// headWord is what one word at the head of a column may stand for.
type headWord struct {
	field  Field
	german bool
}

// headWords is the embedded table by word. A word of both languages has the same
// meaning in both.
var headWords = sync.OnceValue(func() map[string][]headWord {
	words := map[string][]headWord{}
	for cells := range tableRows(headTable) {
		field := Field(slices.Index(fieldNames[:], cells[0]))
		for _, word := range strings.Split(cells[2], ", ") {
			words[word] = append(words[word], headWord{field, cells[1] == "de"})
		}
	}
	return words
})

// unitInHead finds the unit behind a head: Length (mm), L [in], Länge in mm.
var unitInHead = pattern.New(`^(.*?)(?:\s*[(\[]\s*(?:in\s+|all\s+)?` + unitWord + `\s*[)\]]|\s*[/,]\s*` + unitWord + `|\s+(?:in\s+)?` + unitWord + `)$`)

const unitWord = `(mm|cm|in\.?|inch|inches|"|''|ft\.?|feet|zoll|millimet(?:er|re)s?|centimet(?:er|re)s?|zentimeter)`

// unitNamed gives the suffix that a word for a unit stands for, as package
// joinery reads it, or "".
func unitNamed(word string) string {
	word = strings.TrimSuffix(strings.ToLower(word), ".")
	switch {
	case word == "":
		return ""
	case word == "mm" || strings.HasPrefix(word, "milli"):
		return "mm"
	case word == "cm" || strings.HasPrefix(word, "centi") || strings.HasPrefix(word, "zenti"):
		return "cm"
	case word == "ft" || word == "feet":
		return "ft"
	}
	return "in"
}

// splitHead parts a head into its key and the unit behind it, "" where it has
// none.
func splitHead(head string) (key, unit string) {
	lower := strings.ToLower(spreadsheet.Tidy(head))
	if m := unitInHead.FindStringSubmatch(lower); m != nil && strings.TrimSpace(m[1]) != "" {
		return headKey(m[1]), unitNamed(m[2] + m[3] + m[4])
	}
	return headKey(lower), ""
}

// headKey brings the ways to write a head together.
func headKey(head string) string {
	return strings.Join(strings.FieldsFunc(strings.ToLower(head), func(r rune) bool {
		return strings.ContainsRune(" .:-_()[]'’#*?", r)
	}), " ")
}

// timesSign parts the lengths in one cell.
var timesSign = pattern.New(`\s*[xX×*]\s*|\s+by\s+`)

// orderOf reads a head such as L x W x T, which says what the lengths in its
// cells are.
func orderOf(key string) []Field {
	parts := timesSign.Split(strings.ReplaceAll(key, "/", "x"), -1)
	if len(parts) < 2 || len(parts) > 3 {
		return nil
	}
	var order []Field
	for _, part := range parts {
		f, ok := ParseField(part)
		if !ok || f != Length && f != Width && f != Thickness || slices.Contains(order, f) {
			return nil
		}
		order = append(order, f)
	}
	return order
}

// nearestHead is the head that a mistyped one was probably meant to be, or "".
func nearestHead(key string) string {
	if len(key) < 4 {
		return ""
	}
	var words []string
	for word := range headWords() {
		if len(word) > 3 {
			words = append(words, word)
		}
	}
	slices.Sort(words)
	return plantext.Nearest(key, words)
}
