package deck

import (
	"fencecard/joinery/measure"
)

// Screw is where a screw stands in its slot when the work is put together: how
// far from the slot's middle, away from the line on which the board is fixed,
// on the shop's scale; below 0 towards it.
type Screw struct{ FromMiddle measure.Length }

// Recessed reports whether the first height is only for runs that go on from the
// floor of a recess: in whole wood that pass would be too deep.
func (s *Setup) Recessed() bool {
	for i := range s.Runs {
		r := &s.Runs[i]
		if r.Channel.Recess.Depth == 0 && len(r.Heights) > 0 && r.Heights[0] == s.Heights[0] {
			return false
		}
	}
	return len(s.Runs) > 0 && len(s.Heights) > 0
}
