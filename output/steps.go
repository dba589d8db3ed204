package output

import (
	"slices"
	"strings"

	"fencecard/setup"
)

// step is something to do at the machine; short says it where there is no room.
type step struct{ long, short string }

// steps say what to do for one card, in the order it is done, but for what
// cautions that stand in full on the card say already.
func steps(c *setup.Card, inFull []setup.Caution) []step {
	told := func(code string) bool {
		return slices.ContainsFunc(inFull, func(c setup.Caution) bool { return c.Code == code })
	}
	lead := strings.ToUpper(c.Leads.String())
	var all []step
	switch {
	case c.Begin == setup.Drop && told("start-stopped"):
	case c.Begin == setup.Drop:
		all = append(all, step{
			"Drop on: tail end against the back stop, then lower the work onto the turning bit.",
			"Drop: tail on the back stop, lower."})
	default:
		all = append(all, step{
			"Feed in from the right, " + lead + " end first.",
			"Feed in, " + lead + " end first."})
	}
	switch {
	case c.End == setup.Lift && told("end-stopped"):
	case c.End == setup.Lift:
		all = append(all, step{
			"Lift off: hold still at the stop, switch off, lift when the bit stands.",
			"Lift: hold still, switch off, wait."})
	default:
		all = append(all, step{
			"Run out to the left until the work is clear of the bit.",
			"Run out to the left, clear of the bit."})
	}
	if len(c.Heights) > 1 {
		all = append(all, step{"All pieces at one height, then raise the bit.", "All pieces at one height, then raise."})
	}
	if c.Cut.Square {
		all = append(all, step{"Chisel the round ends square.", "Chisel round ends square."})
	}
	return all
}
