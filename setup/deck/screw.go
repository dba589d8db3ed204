package deck

import "fencecard/joinery"

// Screw is where a screw stands in its slot when the work is put together: how
// far from the slot's middle, away from the line on which the board is fixed,
// on the shop's scale; below 0 towards it.
type Screw struct{ FromMiddle joinery.Length }
