package setup

import "fencecard/joinery"

// Leads returns the side of the work that goes first over the bit, when down
// lies on the table and fence bears against the fence. It is the cross product
// fence x down in the stock's axes: with down as -z and fence as +y of the
// machine, whose feed runs toward -x, y x -z = -x.
func Leads(fence, down joinery.Side) joinery.Side { return fence.Cross(down) }
