package wording

import (
	"fmt"
	"slices"
	"strings"

	"fencecard/setup/deck"
)

// GoesInto says into what the whole ends and edges of a piece go, which need no cut
// themselves: "its left goes into the housing in the right of side"; "" where none does.
func GoesInto(joints []deck.Joint, piece string) string {
	var all []string
	for _, j := range joints {
		if j.Part.Piece.Name != piece || j.Part.Cut != nil {
			continue
		}
		goes := ""
		if all == nil {
			goes = "goes "
		}
		text := fmt.Sprintf("its %s %sinto the %s in the %s of %s", j.Part.End, goes, j.Into.Cut.Kind, j.Into.Cut.In, j.Into.Piece.Name)
		if all != nil && text == strings.Replace(all[0], " goes into", " into", 1) || slices.Contains(all, text) {
			continue // of several in one piece
		}
		all = append(all, text)
	}
	return strings.Join(all, ", ")
}
