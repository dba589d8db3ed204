package wording

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/whatif"
)

// Savings says what a change makes less and, if there is any, more.
func Savings(s *whatif.Saving, shop *joinery.Shop) string {
	var less, more []string
	add := func(n int, one, many string) {
		switch {
		case n > 0:
			less = append(less, count(n, one, many))
		case n < 0:
			more = append(more, count(-n, one, many))
		}
	}
	add(s.Less.Bits, "bit", "bits")
	add(s.Less.Fences, "fence setting", "fence settings")
	add(s.Less.Heights, "height", "heights")
	if shop.Stops == joinery.Blocks {
		add(s.Less.Stops, "pair of stops", "pairs of stops")
	}
	if shop.Minutes.Pass > 0 {
		add(s.Less.Passes, "pass", "passes")
	}
	if shop.Minutes.Fit > 0 {
		add(s.Less.Fits, "trial of fit", "trials of fit")
	}
	text := strings.Join(less, ", ") + " less"
	if len(more) > 0 {
		text += ", " + strings.Join(more, ", ") + " more"
	}
	return fmt.Sprintf("%s, %g min", text, s.Less.Time.Minutes())
}
