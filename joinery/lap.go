package joinery

import (
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// Lap is a cut across the end of a piece that takes off part of its thickness.
var Lap = Kind{
	Name:     "lap",
	Says:     "part of the thickness cut away, where another piece lies on it",
	Also:     []string{"half-lap", "halving"},
	Required: []string{"in", "at", "length", "depth"},
	Example:  "in: back, at: left, length: 1 1/2, depth: 3/8",
	Refuses:  map[string]Refusal{"repeat": {"it lies at one place, an end", "write each with a dash of its own"}},
	Laps:     true,
	Deepest:  timber.Share{Num: 2, Den: 3}, // common practice, no source
	lay:      layLap,
}

// layLap lays the channel with the end of the piece against the fence.
func layLap(l *layout) {
	c := l.cut
	if l.crosswise("at", c.At, c.In) {
		l.shoulder("", c.In, "depth", c.Depth)
	}
}

// shoulder lays one channel across the end At, entered from a side.
func (l *layout) shoulder(part string, down Side, key string, depth measure.Length) {
	c := l.cut
	wideOK := l.wide("length", 0, c.Length, c.At)
	if !l.deep(key, depth, down) || !wideOK {
		return
	}
	channel := Channel{Part: part, Down: down, Near: c.At, Width: c.Length, Depth: depth}
	channel.Hi = l.piece.Size[channel.Run()]
	l.channels = append(l.channels, channel)
}
