package joinery

import "fencecard/joinery/measure"

// Crossing is how a shop pushes work across its end.
type Crossing struct {
	With Push
	Base measure.Length // thickness of a carriage's base, which raises the work; 0 for the others
}

// Push is what pushes the work.
type Push uint8

// A square block behind the work, a mitre gauge in its slot, or a carriage that
// the work stands on.
const (
	Block Push = iota
	Gauge
	Carriage
)

// String gives the word a shop file uses.
func (p Push) String() string { return [...]string{"block", "gauge", "carriage"}[p] }
