package joinery

import "fencecard/joinery/timber"

// Rabbet is a channel that takes away an edge.
var Rabbet = Kind{
	Name:     "rabbet",
	Says:     "an edge cut away to a step",
	Also:     []string{"rebate"},
	Required: []string{"in", "along", "width", "depth"},
	Optional: []string{"span"},
	Example:  "in: back, along: left, width: 3/8, depth: 1/2",
	Edge:     true,
	Deepest:  timber.Share{Num: 2, Den: 3}, // common practice, no source
	lay:      layRabbet,
}

// layRabbet lays the channel with the edge itself against the fence.
func layRabbet(l *layout) {
	c := l.cut
	if !l.crosswise("along", c.Along, c.In) {
		return
	}
	channel := Channel{Down: c.In, Near: c.Along, Width: c.Width, Depth: c.Depth}
	lo, hi, spanOK := l.reach(channel.Run())
	channel.Lo, channel.Hi = lo, hi
	wideOK := l.wide("width", 0, c.Width, c.Along)
	if l.deep("depth", c.Depth, c.In) && wideOK && spanOK {
		l.channels = append(l.channels, channel)
	}
}
