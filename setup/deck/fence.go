package deck

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
)

// FenceAt returns the distances from the fence face to the bit's near edge,
// centre and far edge.
func FenceAt(bit *joinery.Bit, nearEdge measure.Length) Fence {
	d := bit.True()
	return Fence{NearEdge: nearEdge, Centre: nearEdge + d/2, FarEdge: nearEdge + d}
}
