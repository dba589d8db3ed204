package setup

import (
	"fencecard/joinery"
)

// Stand is where a card's marks or blocks stand; a zero one is not needed.
type Stand struct {
	begin       Begin
	end         End
	start, stop joinery.Length
}

// Marks tells where the card's marks are, from the leading end of the work.
func (c *Card) Marks() Stand {
	at := Stand{begin: c.Begin, end: c.End}
	if c.Start != nil {
		at.start = c.Start.LeadPastEdge
	}
	if c.Stop != nil {
		at.stop = c.Stop.LeadPastEdge
	}
	return at
}

// Blocks tells where the card's blocks stand: the back one behind the tail at
// the start, the front one before the leading end at the stop.
func (c *Card) Blocks() Stand {
	at := c.Marks()
	if c.Start != nil {
		at.start = c.Start.TailBeforeEdge
	}
	return at
}
