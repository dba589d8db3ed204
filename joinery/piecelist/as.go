package piecelist

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/joinery/plantext"
)

// As tells how several of one piece are made.
type As uint8

// The ways to make several of one piece. A pair is one and its mirror image,
// corners are one and its three. Mirror is for the piece of a row that mirrors that
// of another row, whose name has another side.
const (
	Alike As = iota
	PairLeftRight
	PairFrontBack
	Corners
	Mirror
)

var asNames = [...]string{"alike", "pair left right", "pair front back", "corners", "mirror"}

// asOther are other words for the same.
var asOther = map[string]As{
	"separate": Alike, "same": Alike, "gleich": Alike, "alle gleich": Alike,
	"pair": PairLeftRight, "left right": PairLeftRight, "mirrored": PairLeftRight, "paar links rechts": PairLeftRight, "paar": PairLeftRight,
	"front back": PairFrontBack, "paar vorne hinten": PairFrontBack, "paar vorn hinten": PairFrontBack,
	"corner": Corners, "ecken": Corners,
	"mirror image": Mirror, "spiegelbild": Mirror, "einzeln": Alike,
}

// String gives the word of a list, such as "corners".
func (a As) String() string { return asNames[a] }

// each is how many pieces one of them comes to.
func (a As) each() int {
	switch a {
	case PairLeftRight, PairFrontBack:
		return 2
	case Corners:
		return 4
	}
	return 1
}

func parseAs(text string) (As, string) {
	word := strings.Join(strings.FieldsFunc(strings.ToLower(text), func(c rune) bool { return strings.ContainsRune(" -,/", c) }), " ")
	if i := slices.Index(asNames[:], word); i >= 0 {
		return As(i), ""
	}
	if a, ok := asOther[word]; ok {
		return a, ""
	}
	return Alike, quoted(text) + " is no way to make several"
}

// readAs reads whether the pieces of a row are alike or mirrored. Only an even
// count leaves a question.
func (r *reader) readAs(w *row, p *Piece, above string) (text string) {
	c := r.column(Made)
	q := Question{
		Key:   fmt.Sprintf("as %d", w.Number),
		Place: r.place(w, r.column(Name).index),
		About: "as",
	}
	for a := Alike; a <= Corners; a++ {
		if p.Count%a.each() == 0 {
			q.Choices = append(q.Choices, a.String())
		}
	}
	fits := func(answer string) (As, string) {
		a, wrong := parseAs(answer)
		if wrong == "" && p.Count%a.each() != 0 {
			wrong = fmt.Sprintf("%d of %s cannot be %s: a count of %d, %d, ... can", p.Count, quoted(p.Name), a, a.each(), 2*a.each())
		}
		return a, wrong
	}
	q.Asks = fmt.Sprintf("row %d: are the %d of %s %s?", w.Number, p.Count, quoted(p.Name), plantext.List(q.Choices, "or"))
	q.Problem = fmt.Sprintf("the list does not say whether the %d of %s are alike or mirrored", p.Count, quoted(p.Name))
	q.Remedy = "add a column with the head pairs, and write there " + plantext.List(q.Choices, "or")
	q.Default, q.Why = r.usualAs(p)
	if c != nil {
		if text = w.Cell(c.index); sameAbove[strings.ToLower(text)] {
			text = above
		}
	}
	if text != "" {
		a, wrong := fits(text)
		if wrong == "" {
			p.As, p.told = a, true
			return text
		}
		q.Place, q.Problem, q.Remedy = r.place(w, c.index), wrong, "write "+plantext.List(q.Choices, "or")
		q.Default, q.Why = "", ""
		if _, unknown := parseAs(text); unknown == "" {
			q.Remedy += ", or mend the count"
		}
	} else if p.Count%2 != 0 {
		return text
	}
	p.As, _ = ask(r, q, fits)
	return text
}

// usualAs is what is offered: by a side's word in the name, else by its kind.
func (r *reader) usualAs(p *Piece) (answer, why string) {
	usual := Alike
	switch {
	case p.kind.what == "" && sideIn(p.Name) == "":
		return "", ""
	case p.Count%4 == 0:
		usual = p.kind.four
	default:
		usual = p.kind.two
	}
	why = "it is " + p.kind.what
	if word := sideIn(p.Name); word != "" && usual == Alike && p.Count == 2 && !r.sides[nameKey(otherSide(p.Name))] {
		usual, why = PairLeftRight, fmt.Sprintf("the name says %s", word)
		if isFrontBack(word) {
			usual = PairFrontBack
		}
	}
	if p.kind.what == "" {
		why = "the name says " + sideIn(p.Name)
	}
	return usual.String(), why
}
