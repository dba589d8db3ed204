package piecelist

import (
	_ "embed"
	"fmt"
	"slices"
	"strings"
	"sync"
	"unicode"

	"fencecard/joinery/pattern"
	"fencecard/joinery/piecelist/spreadsheet"
	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
)

//go:embed woods.tsv
var woodTable string

// germanWood is what the table of woods calls a wood with a German name.
type germanWood struct {
	name string
	sure bool
}

var germanWoods = sync.OnceValue(func() map[string]germanWood {
	woods := map[string]germanWood{}
	for cells := range tableRows(woodTable) {
		woods[strings.ToLower(cells[0])] = germanWood{cells[1], cells[2] == "yes"}
	}
	return woods
})

// stockBefore is a thickness in front of a wood: 4/4 cherry, 3/4" plywood, 18 mm
// MDF. It says what was bought, and the finished sizes stand elsewhere.
var stockBefore = pattern.New(`^\d[\d\s/.,]*(?:mm|cm|in\.?|"|'')?\s+(\p{L})`)

// sameAbove are the ways to write that a cell is as the one above it.
var sameAbove = map[string]bool{`"`: true, "''": true, "do": true, "do.": true, "ditto": true, "dto": true, "dto.": true, `-"-`: true, "„": true, "〃": true}

// readWood reads the wood of a row; above is the text of the row before.
func (r *reader) readWood(w *row, p *Piece, above string) (text string) {
	c := r.column(Wood)
	if c == nil {
		return ""
	}
	if text = w.Cell(c.index); sameAbove[strings.ToLower(text)] {
		text = above
	}
	if text == "" {
		return ""
	}
	p.Wood = r.woodNamed(text, c, w)
	return text
}

// woodNamed looks a wood up. Every name is asked about once, for all its rows.
func (r *reader) woodNamed(text string, c *column, w *row) string {
	if name, known := r.woods[text]; known {
		return name
	}
	name, sure := lookUp(text)
	if !sure {
		q := Question{
			Key:     "wood " + text,
			Place:   r.place(w, c.index),
			About:   "the wood " + quoted(text) + " is",
			Asks:    fmt.Sprintf("%s%d: which wood is %s, by the names of fencecard wood, or none?", spreadsheet.Letters(c.index), w.Number, quoted(text)),
			Default: name,
			Problem: quoted(text) + " is no wood in the table",
			Remedy:  "write a name from fencecard wood, or leave the cell empty for the shallowest passes",
		}
		if _, near, _ := timber.FindWood(text); near != "" {
			q.Remedy = "write " + near
			if !strings.Contains(near, " or ") {
				q.Default, q.Why = near, "that is nearest"
			} else {
				q.Problem = quoted(text) + " may be more than one wood"
			}
		}
		if name != "" {
			q.Why = "it is the commonest of that name"
			q.Problem = quoted(text) + " may be more than one wood"
		}
		name, _ = ask(r, q, func(answer string) (string, string) {
			if strings.EqualFold(answer, "none") {
				return "", ""
			}
			if found, near, ok := timber.FindWood(answer); ok {
				return found.Name, ""
			} else if near != "" {
				return "", quoted(answer) + " is no wood in the table; write " + near
			}
			return "", quoted(answer) + " is no wood in the table; write a name from fencecard wood, or none"
		})
	}
	if bare := stockBefore.ReplaceAllString(text, "$1"); sure && !sameWords(bare, name) {
		r.remarks = append(r.remarks, plantext.Brief("taken: the wood "+quoted(text)+" is "+name, 200))
	}
	r.woods[text] = name
	return name
}

// sameWords reports whether two names are of the same words, as "Ash, white" and "white
// ash" are.
func sameWords(a, b string) bool {
	words := func(name string) []string {
		all := strings.FieldsFunc(strings.ToLower(name), func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) })
		slices.Sort(all)
		return all
	}
	return slices.Equal(words(a), words(b))
}

// lookUp finds the wood of a name, or one it may well be.
func lookUp(text string) (name string, sure bool) {
	bare := stockBefore.ReplaceAllString(text, "$1")
	if found, _, ok := timber.FindWood(bare); ok {
		return found.Name, true
	}
	g := germanWoods()[strings.ToLower(bare)]
	return g.name, g.sure
}
