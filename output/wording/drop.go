package wording

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/setup/deck"
)

// NoPivot says how a drop is made that is not done by pivoting: over a start
// hole, or clamped while the turning bit is raised. It is "" for other runs. A
// text sets a length.
func NoPivot(r *deck.Run, text func(joinery.Length) string) string {
	switch {
	case r.Hole != nil:
		return fmt.Sprintf("START HOLE, bored first, as wide as the bit and as deep as the cut: its centre %s from the %s end, %s from the %s. Tail at the back stop, lower straight down over the bit: no pivoting.",
			text(r.Hole.FromLead), r.Shown(r.Leads), text(r.Hole.FromFence), r.Shown(r.Step.Fence))
	case r.Raised:
		return "CLAMPED: tail at the back stop, clamp the work with the bit below the table, raise the turning bit into it, unclamp, feed: no pivoting."
	}
	return ""
}
