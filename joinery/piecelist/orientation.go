package piecelist

import (
	"fmt"
	"strings"

	"fencecard/joinery"
)

// Orientation is how a piece lies in the finished work, seen from the front: along
// which dimensions its length and its thickness run. The width has the third.
type Orientation struct {
	Length, Thickness joinery.Dimension
}

// String gives it in the words of a list.
func (o Orientation) String() string {
	return "length " + directionName(o.Length) + ", thickness " + directionName(o.Thickness)
}

// Width is the dimension that the width runs along.
func (o Orientation) Width() joinery.Dimension { return o.Length.Third(o.Thickness) }

func directionName(d joinery.Dimension) string {
	if d == joinery.TopBottom {
		return "up"
	}
	return d.String()
}

// directions are the words for a direction.
var directions = map[string]joinery.Dimension{
	"up": joinery.TopBottom, "upright": joinery.TopBottom, "top-bottom": joinery.TopBottom, "bottom-top": joinery.TopBottom, "vertical": joinery.TopBottom,
	"left-right": joinery.LeftRight, "right-left": joinery.LeftRight, "across": joinery.LeftRight,
	"front-back": joinery.FrontBack, "back-front": joinery.FrontBack,
	"hoch": joinery.TopBottom, "aufrecht": joinery.TopBottom, "senkrecht": joinery.TopBottom, "oben-unten": joinery.TopBottom,
	"links-rechts": joinery.LeftRight, "vorne-hinten": joinery.FrontBack, "vorn-hinten": joinery.FrontBack,
}

// edgeWords are what lies along a direction.
var edgeWords = map[string]Field{
	"length": Length, "width": Width, "thickness": Thickness,
	"länge": Length, "breite": Width, "dicke": Thickness, "stärke": Thickness,
}

const writeAs = "; write it as " + orientationOffered

const orientationOffered = "length up, thickness front-back"

// parseOrientation reads a way to lie: "length up, thickness front-back". A piece that
// is square needs only the length, since its thickness is as its width.
func parseOrientation(text string, square bool) (Orientation, string) {
	found := map[Field]joinery.Dimension{}
	for _, part := range strings.Split(strings.ReplaceAll(strings.ToLower(text), ";", ","), ",") {
		words := strings.Fields(strings.NewReplacer(" - ", "-", "–", "-", " to ", "-").Replace(part))
		field, direction := Length, ""
		switch len(words) {
		case 1:
			direction = words[0]
		case 2:
			field, direction = edgeWords[words[0]], words[1]
		}
		d, ok := directions[direction]
		if !ok || field == NoField {
			return Orientation{}, quoted(text) + " is no way to lie" + writeAs
		}
		for f, other := range found {
			if f == field || other == d {
				return Orientation{}, quoted(text) + " says two things of one" + writeAs
			}
		}
		found[field] = d
	}
	o, long := Orientation{}, false
	if o.Length, long = found[Length]; !long {
		return Orientation{}, quoted(text) + " does not say which way the length lies" + writeAs
	}
	thickness, thick := found[Thickness]
	width, wide := found[Width]
	switch {
	case thick:
		o.Thickness = thickness
	case wide:
		o.Thickness = o.Length.Third(width)
	case square:
		o.Thickness = acrossOf(o.Length)
	default:
		return Orientation{}, fmt.Sprintf("%s does not say which way the thickness lies; write %s, thickness %s, or thickness %s", quoted(text),
			strings.TrimSpace(text), directionName(acrossOf(o.Length)), directionName(o.Length.Third(acrossOf(o.Length))))
	}
	return o, ""
}

// acrossOf is a dimension across the length, for the thickness of a square
// piece: from front to back, unless the length has that.
func acrossOf(d joinery.Dimension) joinery.Dimension {
	if d == joinery.FrontBack {
		return joinery.LeftRight
	}
	return joinery.FrontBack
}

// readOrientation reads which way the piece of a row lies. A list that does not say it
// is asked, with what is usual for a piece of that name.
func (r *reader) readOrientation(w *row, p *Piece, above string) (text string) {
	square := p.Width.Length == p.Thickness.Length && p.Width.Length > 0
	c := r.column(Lies)
	q := Question{
		Key:     fmt.Sprintf("lies %d", w.Number),
		Place:   r.place(w, r.column(Name).index),
		About:   "lies",
		Asks:    fmt.Sprintf("row %d: which way does %s lie?", w.Number, quoted(p.Name)),
		Choices: []string{"length up", "length left-right", "length front-back", "thickness up", "thickness left-right", "thickness front-back"},
		Problem: "the list does not say which way " + quoted(p.Name) + " lies in the finished work",
	}
	offered := "which way it lies, such as " + orientationOffered
	if p.kind.what != "" {
		q.Default, q.Why = p.kind.lies.String(), "it is "+p.kind.what
		if square {
			q.Default, _, _ = strings.Cut(q.Default, ",")
		}
		offered = q.Default
	}
	q.Remedy = "add a column with the head orientation, and write there " + offered
	if c != nil {
		if text = w.Cell(c.index); sameAbove[strings.ToLower(text)] {
			text = above
		}
		q.Remedy = "write there " + offered
	}
	if text != "" {
		lies, wrong := parseOrientation(text, square)
		if wrong == "" {
			p.Lies = lies
			return text
		}
		q.Place, q.Default, q.Why = r.place(w, c.index), "", ""
		q.says(wrong)
	}
	p.Lies, _ = ask(r, q, func(answer string) (Orientation, string) { return parseOrientation(answer, square) })
	return text
}
