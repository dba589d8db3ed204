package setup

import (
	"fencecard/joinery"
	"fencecard/setup/deck"
)

// raised reports whether the work is clamped and the turning bit raised into it:
// where the shop can do that, and pivoting would tilt the work steeply or bring
// its tail, where a hand would hold it, near the bit.
func raised(r *deck.Run, shop *joinery.Shop) bool {
	return shop.Raises && r.Hole == nil && r.HardDrop(shop.Rules)
}
