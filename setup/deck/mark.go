package deck

import (
	"fencecard/joinery/measure"
)

// Mark is where the work stands when a stopped cut starts or stops. At the
// start the bit's edge is its trailing edge, at the stop its leading edge.
// Past is to the left, before to the right; negative means the other side.
type Mark struct {
	Line             measure.Length // the layout line, from the leading end of the work
	LeadPastEdge     measure.Length
	LeadPastCentre   measure.Length
	TailBeforeEdge   measure.Length
	TailBeforeCentre measure.Length
}
