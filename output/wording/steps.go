package wording

import (
	"slices"

	"fencecard/setup/deck"
)

// Step is something to do at the machine; short says it where there is no room.
type Step struct{ Long, short string }

// Words says it, in short where there is no room.
func (s Step) Words(compact bool) string {
	if compact {
		return s.short
	}
	return s.Long
}

// Steps say what to do for one card, in the order it is done, but for what the
// panels of the marks and the cautions in full say already. Between stop blocks
// the whole ladder is climbed before they are moved.
func Steps(r *deck.Run, inFull []deck.Caution, blocks bool) []Step {
	told := func(code string) bool {
		return slices.ContainsFunc(inFull, func(c deck.Caution) bool { return c.Code == code })
	}
	var all []Step
	switch {
	case r.Hole != nil:
		all = append(all, Step{
			"Bore a start hole as wide as the bit and as deep as the cut; tail end against the back stop, lower the work straight down, the hole over the turning bit. No pivoting.",
			"Bore a start hole; tail on the back stop, lower straight down over the bit."})
	case r.Raised:
		all = append(all, Step{
			"Tail end against the back stop, clamp the work with the bit below the table, and raise the turning bit into it; then unclamp and feed. No pivoting.",
			"Tail on the back stop, clamp, raise the turning bit into the work, unclamp."})
	case r.Begin == deck.Drop && !told("start-stopped"):
		all = append(all, Step{
			"Drop on: tail end against the back stop, then lower the work onto the turning bit.",
			"Drop: tail on the back stop, lower."})
	}
	if r.End == deck.Lift && !told("end-stopped") {
		all = append(all, Step{
			"Lift off: hold still at the stop, switch off, lift when the bit stands.",
			"Lift: hold still, switch off, wait."})
	}
	stopped := r.Begin == deck.Drop || r.End == deck.Lift
	switch {
	case len(r.Heights) == 1:
	case blocks && stopped:
		all = append(all, Step{
			"Between these stops all pieces at one height, then raise the bit; move the stops only when the last height is done.",
			"Between these stops all pieces at one height, then raise; move the stops last."})
	default:
		all = append(all, Step{"All pieces at one height, then raise the bit.", "All pieces at one height, then raise."})
	}
	if r.Cut.Square && stopped {
		all = append(all, Step{"Chisel the round ends square.", "Chisel round ends square."})
	}
	return all
}
