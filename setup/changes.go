package setup

import "fencecard/joinery"

// Count counts what is set while the setups are run in their order, the first
// of each included, and the time it takes.
func Count(setups []Setup, minutes joinery.Minutes) Changes {
	var c Changes
	var last *Setup
	for i := range setups {
		s := &setups[i]
		if last == nil || last.Bit != s.Bit {
			c.Bits++
		}
		if last == nil || last.Bit != s.Bit || last.Fence != s.Fence {
			c.Fences++
		}
		c.Heights += len(s.Heights)
		last = s
	}
	c.Time = joinery.Time(c.Bits)*minutes.Bit + joinery.Time(c.Fences)*minutes.Fence +
		joinery.Time(c.Heights)*minutes.Height
	return c
}
