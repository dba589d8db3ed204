package output

import (
	"slices"

	"fencecard/setup"
)

// step is something to do at the machine; short says it where there is no room.
type step struct{ long, short string }

// steps say what to do for one card, in the order it is done, but for what the
// panels of the marks and the cautions in full say already.
func steps(c *setup.Card, inFull []setup.Caution) []step {
	told := func(code string) bool {
		return slices.ContainsFunc(inFull, func(c setup.Caution) bool { return c.Code == code })
	}
	var all []step
	if c.Begin == setup.Drop && !told("start-stopped") {
		all = append(all, step{
			"Drop on: tail end against the back stop, then lower the work onto the turning bit.",
			"Drop: tail on the back stop, lower."})
	}
	if c.End == setup.Lift && !told("end-stopped") {
		all = append(all, step{
			"Lift off: hold still at the stop, switch off, lift when the bit stands.",
			"Lift: hold still, switch off, wait."})
	}
	if len(c.Heights) > 1 {
		all = append(all, step{"All pieces at one height, then raise the bit.", "All pieces at one height, then raise."})
	}
	if c.Cut.Square && (c.Begin == setup.Drop || c.End == setup.Lift) {
		all = append(all, step{"Chisel the round ends square.", "Chisel round ends square."})
	}
	return all
}
