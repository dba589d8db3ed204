package wording

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/deck"
)

// What differs in its figures is said in the gravest, the milder ones behind it.
func TestTheGravestFigureComesFirst(t *testing.T) {
	a, b, c := &deck.Run{Setup: 1, Index: 1}, &deck.Run{Setup: 1, Index: 2}, &deck.Run{Setup: 1, Index: 3}
	for _, row := range []struct{ code, mild, worse, want string }{
		{"guided", "Only 3 in along", "Only 7/8 in along", "Only 7/8 in along (1.1: 3 in)"},
		{"guided", "Only 10 mm along", "Only 9.5 mm along", "Only 9.5 mm along (1.1: 10 mm)"},
		{"passes", "at most 5/16 in", "at most 1/4 in", "at most 1/4 in (1.1: 5/16 in)"},
		{"end-gone", "over 7/8 in", "over 1 1/4 in", "over 1 1/4 in (1.1: 7/8 in)"},
		{"swings", "Reaches 20 out, rides 3", "Reaches 38 out, rides 4", "Reaches 38 out, rides 4 (1.1: 20, 3)"},
		{"swings", "Reaches 38 out, rides 4", "Reaches 38 out, rides 3", "Reaches 38 out, rides 3 (1.1: 38, 4)"},
		{"start-hole", "2 from the left", "9 from the left", "2 from the left (1.2: 9)"},
	} {
		said := func(words string, r *deck.Run) Minding {
			return Minding{Caution: deck.Caution{Code: row.code, Brief: words}, Runs: []*deck.Run{r}}
		}
		once := merged([]Minding{said(row.mild, a), said(row.worse, b)}, []*deck.Run{a, b, c})
		assert.Len(t, once, 1)
		assert.Equal(t, row.want, once[0].Brief)
		assert.Equal(t, []*deck.Run{a, b}, once[0].Runs)
	}
}
