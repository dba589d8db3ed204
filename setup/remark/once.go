package remark

import (
	"fmt"
	"strings"

	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
	"fencecard/setup/deck"
)

// Once returns the deck's warnings to be read: what is said of a piece and
// again of its mirror images, in the same words and figures, is said once, with how many
// others it is true of;
// and what is said of several cuts in the same words and figures is said once,
// with where else.
func Once(d *deck.Deck) []deck.Warning { return likewise(onceMirrored(d)) }

// mostPlaces is how many cuts are named that a warning is true of as well.
const mostPlaces = 8

// likewise joins warnings of one cause.
func likewise(all []deck.Warning) []deck.Warning {
	var once []deck.Warning
	first := map[string]int{} // cause to where in once
	also := map[int][]string{}
	for _, w := range all {
		key := cause(w)
		at, told := first[key]
		if !told || w.Piece == "" {
			first[key] = len(once)
			once = append(once, w)
			continue
		}
		also[at] = append(also[at], place(w))
	}
	for at, places := range also {
		more := ""
		if n := len(places) - mostPlaces; n > 0 {
			more = fmt.Sprintf("; and %d more", n)
			places = places[:mostPlaces]
		}
		once[at].Text += " (likewise " + strings.Join(places, "; ") + more + ")"
	}
	return once
}

// place names the cut, or the piece, that a warning is about.
func place(w deck.Warning) string {
	name := fmt.Sprintf("%q", w.Piece)
	if w.Cut != "" {
		name = fmt.Sprintf("%q of %s", w.Cut, name)
	}
	if w.Place.Line > 0 {
		name += fmt.Sprintf(", line %d", w.Place.Line)
	}
	return name
}

// cutName is a name in a warning, with the side that a cut is in.
var cutName = pattern.New(`"[^"]*"( in the (left|right|front|back|top|bottom))?`)

// cause is what a warning says, whatever piece and cut it says it of.
func cause(w deck.Warning) string {
	text := strings.TrimPrefix(w.Text, w.Piece+": ")
	return w.Code + " " + cutName.ReplaceAllString(text, `""`)
}

// sideName is what alone differs in what is said of a mirror image.
var sideName = pattern.New(`\b(left|right|front|back|top|bottom)\b`)

// mirrored is what a warning says but for the sides. A mirror image may have worse
// figures where the other end of the piece leads, and then needs other advice.
func mirrored(w deck.Warning) string { return sideName.ReplaceAllString(cause(w), "") }

func onceMirrored(d *deck.Deck) []deck.Warning {
	type key struct {
		piece, cut, code, says string
		place                  plantext.Place
	}
	source := map[string]string{}
	for i := range d.Plan.Pieces {
		p := &d.Plan.Pieces[i]
		source[p.Name] = p.Name
		if p.MirrorOf != "" {
			source[p.Name] = p.MirrorOf
		}
	}
	var once []deck.Warning
	first := map[key]int{}                  // where in once
	others := make(map[int]map[string]bool) // the other pieces, by name
	for _, w := range d.Warnings {
		k := key{source[w.Piece], w.Cut, w.Code, mirrored(w), w.Place}
		at, told := first[k]
		if !told || k.piece == "" || once[at].Piece == w.Piece {
			if !told {
				first[k] = len(once)
			}
			once = append(once, w)
			continue
		}
		if others[at] == nil {
			others[at] = map[string]bool{}
		}
		others[at][w.Piece] = true
	}
	for at, pieces := range others {
		once[at].Text += fmt.Sprintf(" (and %d mirrored)", len(pieces))
	}
	return once
}
