package deck

import (
	"fencecard/joinery/measure"
)

// Stand is where a run's marks or blocks stand; a zero one is not needed.
type Stand struct {
	begin       Begin
	end         End
	start, stop measure.Length
}

// Marks tells where the run's marks are, from the leading end of the work.
func (r *Run) Marks() Stand {
	at := Stand{begin: r.Begin, end: r.End}
	if r.Start != nil {
		at.start = r.Start.LeadPastEdge
	}
	if r.Stop != nil {
		at.stop = r.Stop.LeadPastEdge
	}
	return at
}

// Blocks tells where the run's blocks stand: the back one behind the tail at
// the start, the front one before the leading end at the stop.
func (r *Run) Blocks() Stand {
	at := r.Marks()
	if r.Start != nil {
		at.start = r.Start.TailBeforeEdge
	}
	return at
}
