package wording

import (
	"slices"

	"fencecard/setup/deck"
)

// Pairs counts the marks of a setup, or the stops that are set there: "5 pairs of
// stops (C twice: 5.10 waits for 5.8)"; "" where it has none.
func Pairs(u *deck.Setup, blocks bool) string {
	if len(u.Marks) == 0 {
		return ""
	}
	if !blocks {
		return Plural(len(u.Marks), "pair") + " of marks"
	}
	text := Plural(u.StopsSet(), "pair") + " of stops"
	why := ""
	for _, c := range u.Climbs() {
		if letter, waits := setAgain(u, c); letter != "" {
			if why != "" {
				why += "; "
			}
			why += letter + " again"
			if waits != "" {
				why += ": " + waits
			}
		}
	}
	if why != "" {
		text += " (" + why + ")"
	}
	return text
}

// setAgain is the letter of the pair that is set for a climb though it was set for
// an earlier one, and which run waits for which that was cut in between, where one
// does.
func setAgain(u *deck.Setup, c deck.Climb) (letter, waits string) {
	r := &c.Runs[0]
	first := slices.IndexFunc(u.Runs, func(other deck.Run) bool { return other.Pair == r.Pair })
	if r.Pair == "" || first < 0 || u.Runs[first].Climb == r.Climb {
		return "", ""
	}
	for i := range c.Runs {
		run := &c.Runs[i]
		names := run.Piece.WaitsFor(run.Cut)
		for k := len(u.Runs) - 1; k > first; k-- {
			before := &u.Runs[k]
			if before.Climb < run.Climb && before.Piece == run.Piece && slices.Contains(names, before.Cut.Name) {
				return r.Pair, run.Number() + " waits for " + before.Number()
			}
		}
	}
	return r.Pair, ""
}

// BlocksFor says for which runs of a climb of a setup stop blocks are set, that
// these go through together, and why a pair is set that was set before.
func BlocksFor(u *deck.Setup, climb int) string {
	for _, c := range u.Climbs() {
		if c.Runs[0].Climb == climb {
			return "STOP BLOCKS: " + blocksLine(u, c)
		}
	}
	return ""
}

func blocksLine(u *deck.Setup, c deck.Climb) string {
	first, last := c.Runs[0].Number(), c.Runs[len(c.Runs)-1].Number()
	text := "none for "
	letter, waits := setAgain(u, c)
	switch {
	case letter != "":
		text = "set them again for "
	case c.Blocks:
		text = "set them for "
	}
	if first == last {
		text += "run " + first
	} else {
		text += "runs " + first + " to " + last + ", which go through together, height by height"
	}
	if waits != "" {
		text += "; " + waits
	}
	return text
}
