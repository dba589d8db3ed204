package ladder

import (
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// bites returns the rungs from one height up to a demand's depth, none of whose
// passes takes more wood than its cap: the fewest, on the coarsest division that
// needs no more of them. Each pass takes as much as it may, so that the last, which
// leaves the surface, is the lightest. It returns none where one division of the
// scale takes too much.
func bites(from measure.Length, d Demand, scale measure.Scale) []measure.Length {
	return fewest(from, d.Depth, scale, func(from, division measure.Length) measure.Length {
		if d.takes(from, d.Depth) <= d.Cap {
			return d.Depth
		}
		// The wood grows with the height: the highest rung is found by halving.
		low, high := from/division, d.Depth/division
		for low < high {
			middle := (low + high + 1) / 2
			if d.takes(from, middle*division) <= d.Cap {
				low = middle
			} else {
				high = middle - 1
			}
		}
		return low * division
	})
}

// Bites reports whether passes set on the scale shape the whole of a demand's edge.
func Bites(d Demand, scale measure.Scale) bool { return len(bites(0, d, scale)) > 0 }

// The most wood of one pass that shapes an edge, in mm2: 0.032 and 0.05 sq in, or
// 20.5 and 32 mm2, and so many times that for a panel bit on a thick shank (common
// practice, no source: a quarter or three-eighths radius in one pass, a half-inch
// one in two, a panel in three to five).
const (
	hardBiteInch, softBiteInch = 0.032 * 25.4 * 25.4, 0.05 * 25.4 * 25.4
	hardBite, softBite         = 20.5, 32.0
	panelBites                 = 3
)

// thickShank is the shank that holds a panel bit in a full bite.
const thickShank = 12 * measure.Millimetre

// biteFor returns the most wood of one pass of a bit that shapes edges, as a strip
// 1 mm wide: the shop's own, or by the wood's hardness, three times that for a panel
// bit on a thick shank.
func biteFor(bit *joinery.Bit, wood timber.Wood, shop *joinery.Shop) Cap {
	if shop.Bite > 0 {
		return Cap{Depth: shop.Bite, Rule: "the shop's own bite"}
	}
	hard, soft := hardBite, softBite
	if shop.Scale.Unit == measure.Inches {
		hard, soft = hardBiteInch, softBiteInch
	}
	area, rule := hard, "the usual bite in hard or unknown wood"
	if !isHard(wood) {
		area, rule = soft, "the usual bite in "+wood.Name
	}
	if bit.IsPanelBit() && bit.Shank >= thickShank {
		area, rule = area*panelBites, "three times "+rule+", for a panel bit on a thick shank"
	}
	return Cap{Depth: measure.Strip(area), Rule: rule}
}
