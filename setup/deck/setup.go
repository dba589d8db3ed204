package deck

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// Setup is one bit at one fence distance, and the runs made there.
type Setup struct {
	Number  int // from 1, in running order
	Bit     *joinery.Bit
	Fence   Fence
	Heights []measure.Length // the ladder, climbing, as depths in the wood; between blocks the heights of all climbs
	// Carriage is the thickness of the carriage's base that all its work stands
	// on; 0 without one. The bit stands higher by as much.
	Carriage measure.Length
	Marks    []Pair // in the order of the runs
	Runs     []Run
	Kept     *Kept // what the maker's setup book says of it; nil where it is not kept
}

// Kept is what a setup book says of a setup that equals one in it.
type Kept struct {
	Name  string
	Code  string   // from the setup's contents, the same on every machine
	Notes []string // the maker's own, a line each
	// Learnt says what test cuts taught, a sentence each without a full stop:
	// "after the test cut the fence stood at 33/64 to the near edge".
	Learnt []string
	// Where the fence stood to the near edge after the test cut, and the bit at
	// its full height; nil where that was not written down. Learnt has these too.
	FenceStood, HeightStood *measure.Length
}

// Fence is the distance from the fence face to the bit; to the near edge it
// is negative where the bit is buried in the fence.
type Fence struct {
	NearEdge, Centre, FarEdge measure.Length
}

// Key returns what the table is set to.
func (s *Setup) Key() Key { return Key{s.Bit, s.Fence.NearEdge, s.Carriage} }

// BitHeights returns how high the bit stands above the table for each height, as computed.
func (s *Setup) BitHeights() []measure.Length {
	above := make([]measure.Length, len(s.Heights))
	for i, h := range s.Heights {
		above[i] = h + s.Carriage
	}
	return above
}
