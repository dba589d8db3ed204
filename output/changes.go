package output

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// changesLines says what is set and how long it takes, and, where that was
// looked into, whether anything takes less.
func changesLines(d *deck.Deck) []string {
	lines := []string{fmt.Sprintf("%s to set: about %g min", changesCounted(d), d.Changes.Time.Minutes())}
	if v := verdict(d.Changes); v != "" {
		lines = append(lines, v)
	}
	return lines
}

// changesCounted counts what is set: "3 bits, 9 fence distances, 56 heights".
func changesCounted(d *deck.Deck) string {
	c := d.Changes
	set := plural(c.Bits, "bit") + ", " + plural(c.Fences, "fence distance") + ", " + plural(c.Heights, "height")
	if d.Plan.Shop.Stops == joinery.Blocks {
		set += ", " + count(c.Stops, "pair of blocks", "pairs of blocks")
	}
	return set
}

// verdict says how sure it is that nothing takes less; it is empty where
// nobody looked.
func verdict(c deck.Changes) string {
	switch {
	case c.Proved:
		return "proved: no choice of bits and no order takes less"
	case c.Bound > 0:
		return fmt.Sprintf("nothing takes less than %g min; a longer search may find less", c.Bound.Minutes())
	}
	return ""
}

// blocksLine says for which cards stop blocks are set, and that these are run
// together.
func blocksLine(c deck.Climb) string {
	first, last := c.Runs[0].Number(), c.Runs[len(c.Runs)-1].Number()
	text := "none for "
	if c.Blocks {
		text = "set them for "
	}
	if first == last {
		return text + "card " + first
	}
	return text + "cards " + first + " to " + last + ", which go through together, height by height"
}
