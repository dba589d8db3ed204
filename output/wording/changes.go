package wording

import (
	"fmt"
	"strings"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// ChangesLines says what is set and how long it takes, and, where that was
// looked into, whether anything takes less.
func ChangesLines(d *deck.Deck) []string {
	set, took := ChangesCounted(d)+" to set", fmt.Sprintf(": about %g min", d.Changes.Time.Minutes())
	lines := []string{set + took}
	if cut := strings.TrimPrefix(CuttingCounted(d), ", "); cut != "" {
		lines = []string{set, cut + took + " in all"}
	}
	if v := Verdict(d.Changes); v != "" {
		lines = append(lines, v)
	}
	return lines
}

// NothingToCut says of a deck without runs that it has none, and what is printed of it.
const NothingToCut = "nothing to cut at the table, so no setups: sizes and piece cards alone"

// ChangesCounted counts what is set: "3 bits, 9 fence distances, 56 heights".
func ChangesCounted(d *deck.Deck) string {
	c := d.Changes
	set := Plural(c.Bits, "bit") + ", " + Plural(c.Fences, "fence distance") + ", " + Plural(c.Heights, "height")
	if d.Plan.Shop.Stops == joinery.Blocks {
		set += ", " + count(c.Stops, "pair of stops", "pairs of stops")
	}
	return set
}

// CuttingCounted counts what is cut, where the shop says what that takes: ", 130
// passes, 1 trial of fit".
func CuttingCounted(d *deck.Deck) string {
	text := ""
	if d.Plan.Shop.Minutes.Pass > 0 {
		text += ", " + count(d.Changes.Passes, "pass", "passes")
	}
	if d.Plan.Shop.Minutes.Fit > 0 && d.Changes.Fits > 0 {
		text += ", " + count(d.Changes.Fits, "trial of fit", "trials of fit")
	}
	return text
}

// Verdict says how sure it is that nothing takes less; it is empty where
// nobody looked.
func Verdict(c deck.Changes) string {
	switch {
	case c.Proved:
		return "the least time, proved: no other bits and no other order take less"
	case c.Bound > 0:
		return fmt.Sprintf("nothing takes less than %g min; a longer search may find less", c.Bound.Minutes())
	}
	return ""
}
