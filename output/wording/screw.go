package wording

import (
	"strconv"

	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// RecessFirst says where a setup is tried whose first height is below the floor of
// a cut made before, such as a slot's head.
const RecessFirst = "Height 1 goes on from an earlier cut: try it in that trial."

// ScrewPlace says where the screw of a slot goes at assembly; "" where that is
// not known or the run is no slot's.
func ScrewPlace(r *deck.Run, s measure.Scale) string {
	if r.Screw == nil {
		return ""
	}
	at := "in the middle of its slot"
	switch from := r.Screw.FromMiddle; {
	case from > 0:
		at = s.Say(from) + " from the middle of its slot, away from the fixed line"
	case from < 0:
		at = s.Say(-from) + " from the middle of its slot, toward the fixed line"
	}
	return "At " + strconv.FormatFloat(r.Cut.Slot.Move.Climate.Assembly, 'g', -1, 64) + " % moisture put the screw " + at + "."
}
