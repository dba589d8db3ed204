package sheets

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/output/paper"
	"fencecard/setup/deck"
)

// Replaced tells which letters of the names and notes of a deck the fonts of the
// pages lack, and what is printed in their places; it is "" where they lack none.
func Replaced(d *deck.Deck) string {
	var lacking []rune
	look := func(texts ...string) {
		for _, text := range texts {
			for _, r := range paper.Lacking(text) {
				if !slices.Contains(lacking, r) {
					lacking = append(lacking, r)
				}
			}
		}
	}
	look(d.Plan.Title)
	for i := range d.Setups {
		s := &d.Setups[i]
		look(s.Bit.Name)
		if s.Kept != nil {
			look(s.Kept.Name)
			look(s.Kept.Notes...)
		}
		for j := range s.Runs {
			r := &s.Runs[j]
			look(r.Piece.Name, r.Piece.Wood.Name, r.Cut.Name, r.Cut.Note, r.Channel.Part)
		}
	}
	return inPlaceOf(lacking)
}

// mostReplaced is how many letters are told; of a script the fonts lack all.
const mostReplaced = 8

func inPlaceOf(lacking []rune) string {
	var told []string
	for i, r := range lacking {
		if i == mostReplaced {
			told = append(told, fmt.Sprintf("and %d more", len(lacking)-i))
			break
		}
		told = append(told, fmt.Sprintf("%q as %s", string(r), paper.InPlaceOf(r)))
	}
	if len(told) == 0 {
		return ""
	}
	return "the pages have no letter for some of the names, and print " + strings.Join(told, ", ")
}
