package output

import (
	"strings"

	"fencecard/setup"
)

// steps say what to do at the machine for one card, in the order it is done.
func steps(c *setup.Card) []string {
	lead := strings.ToUpper(c.Leads.String())
	var all []string
	if c.Begin == setup.Drop {
		all = append(all, "Tail end against the back stop first, then lower the work onto the turning bit.")
	} else {
		all = append(all, "Feed in from the right, "+lead+" end first.")
	}
	if c.End == setup.Lift {
		all = append(all, "Feed left to the stop mark. Hold still, switch off, lift when the bit stands.")
	} else {
		all = append(all, "Feed left until the work is clear of the bit.")
	}
	if len(c.Heights) > 1 {
		all = append(all, "Run every piece at one height, then raise the bit.")
	}
	if c.Cut.Square {
		all = append(all, "Chisel the round ends square.")
	}
	return all
}
