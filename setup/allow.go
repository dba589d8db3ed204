package setup

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
	"fencecard/setup/ladder"
)

// Allowance is what a shop lets one of its bits do.
type Allowance struct {
	Bit     *joinery.Bit
	Caps    []ladder.Cap // of one pass, in each of the woods asked for
	Top     joinery.TopSpeed
	Rim     float64        // speed of the rim at the top speed, m/s; 0 where that is not known
	Deepest measure.Length // the deepest cut; 0 when nothing bounds it
	Widest  measure.Length // the widest cut, the fence moved from pass to pass; 0 when nothing bounds it
}

// Allowances works out what each bit of the shop may do in the woods given.
func Allowances(shop *joinery.Shop, woods []timber.Wood) []Allowance {
	all := make([]Allowance, len(shop.Bits))
	for i := range shop.Bits {
		bit := &shop.Bits[i]
		a := Allowance{Bit: bit, Top: bit.TopSpeed(shop.Speed), Deepest: deepestCut(bit, shop), Widest: widestCut(bit, shop)}
		a.Rim = bit.RimSpeed(a.Top.RPM)
		for _, w := range woods {
			a.Caps = append(a.Caps, ladder.CapFor(bit, w, shop))
		}
		all[i] = a
	}
	return all
}

// deepestCut is the lesser of the bit's cutting length and the table's lift.
func deepestCut(bit *joinery.Bit, shop *joinery.Shop) measure.Length {
	if bit.Cutting == 0 || shop.Lift > 0 && shop.Lift < bit.Cutting {
		return shop.Lift
	}
	return bit.Cutting
}

// widestCut is as far as the fence moves from a cut at its face: to its reach at
// the bit's centre and half the bit beyond, or the most moves anybody makes.
func widestCut(bit *joinery.Bit, shop *joinery.Shop) measure.Length {
	if shop.Fence.Reach == 0 {
		return 0
	}
	d := bit.True()
	most := d + (mostPositions-1)*max(0, d-shop.Scale.Division)
	return min(most, shop.Fence.Reach+d/2)
}
