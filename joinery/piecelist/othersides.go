package piecelist

import (
	"fmt"
	"strings"

	"fencecard/joinery"
)

// sideless is a name with its sides' words taken out, and the sides they are for,
// one for each dimension that is named.
func sideless(name string) (rest string, sides [3]joinery.Side) {
	words := strings.Fields(strings.ToLower(name))
	for i, w := range words {
		for _, table := range []map[joinery.Side][]string{sideWords, germanSides} {
			for _, s := range []joinery.Side{joinery.Left, joinery.Right, joinery.Front, joinery.Back} {
				if isSide(w, table, s) && sides[s.Dimension()] == joinery.NoSide {
					sides[s.Dimension()] = s
					words[i] = "/"
				}
			}
		}
	}
	return strings.Join(words, " "), sides
}

// mirrorRows asks of every row whose name is that of an earlier one but for its
// side, and which is of the same size, whether it is its mirror image: a list
// that has the left and the right side in rows of their own.
func (r *reader) mirrorRows() {
	first := map[string]*Piece{}
	for i := range r.list.Pieces {
		p := &r.list.Pieces[i]
		rest, sides := sideless(p.Copies[0].Name)
		if sides == [3]joinery.Side{} || len(p.Copies) > 1 {
			r.mirrorOfNothing(p)
			continue
		}
		key := fmt.Sprint(rest, p.Length, p.Width, p.Thickness, p.Wood, p.Lies, p.Count)
		of := first[key]
		var across []joinery.Dimension
		if of != nil {
			across = between(of, sides)
		}
		switch {
		case across == nil:
			r.mirrorOfNothing(p)
			first[key] = p
		case p.As == Mirror || !p.told && !of.told && r.askMirror(p, of):
			p.Copies[0].Of, p.Copies[0].Across = of.Copies[0].Name, across
		}
	}
}

// between lists the dimensions in which the sides of two names differ, nil where
// one names a side that the other does not.
func between(of *Piece, sides [3]joinery.Side) []joinery.Dimension {
	_, others := sideless(of.Copies[0].Name)
	var across []joinery.Dimension
	for _, d := range joinery.Dimensions {
		if (sides[d] == joinery.NoSide) != (others[d] == joinery.NoSide) {
			return nil
		}
		if sides[d] != others[d] {
			across = append(across, d)
		}
	}
	return across
}

// mirrorOfNothing faults a row that the list calls a mirror image where there is
// none that it could mirror.
func (r *reader) mirrorOfNothing(p *Piece) {
	if p.As == Mirror {
		r.fault(p.place, fmt.Sprintf("%s is to be a mirror image, but no row before it has that name with another side, and that size", quoted(p.Name)),
			"write first the row that it mirrors, such as left side before right side")
	}
}

func (r *reader) askMirror(p, of *Piece) bool {
	name, other := quoted(p.Copies[0].Name), quoted(of.Copies[0].Name)
	q := Question{
		Key:     fmt.Sprintf("mirror %d", p.Row),
		Place:   p.place,
		About:   "as",
		Asks:    fmt.Sprintf("row %d: is %s the mirror image of %s, or separate?", p.Row, name, other),
		Default: Mirror.String(),
		Why:     other + " is of the same size",
		Choices: []string{Mirror.String(), "separate"},
		Problem: fmt.Sprintf("the list does not say whether %s is the mirror image of %s", name, other),
		Remedy:  "add a column with the head pairs, and write there mirror or separate",
	}
	answer, _ := ask(r, q, oneOf(q.Choices...))
	p.Remarks = append(p.Remarks, r.taken()...)
	return answer == Mirror.String()
}
