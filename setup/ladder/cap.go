package ladder

import (
	"fmt"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/timber"
)

// Cap is the greatest depth of one pass, on the shop's scale, and the rule it
// came from in the maker's words.
type Cap struct {
	Depth measure.Length
	Rule  string
}

// shares are what one pass may take of the bit's diameter below a side hardness
// in lbf (common practice, no source).
var shares = []struct {
	below float64
	share timber.Share
	words string
}{
	{600, timber.Share{Num: 1, Den: 1}, "the bit's diameter"},
	{1000, timber.Share{Num: 3, Den: 4}, "3/4 of the bit's diameter"},
	{1500, timber.Share{Num: 5, Den: 8}, "5/8 of the bit's diameter"},
}

// hardFrom is the side hardness from which thin shanks take less, in lbf.
const hardFrom = 1000

// Limits on one pass whatever the diameter (common practice, no source).
const (
	deepestPass     = 3 * measure.Inch / 8
	gentlePass      = measure.Inch / 4
	gentleThinShank = measure.Inch / 8
	quarterShank    = measure.Inch / 4
	thinShankSoft   = measure.Inch / 4
	thinShankHard   = measure.Inch / 8
	eightShank      = 8 * measure.Millimetre
	midShankSoft    = 6 * measure.Millimetre
	midShankHard    = 4 * measure.Millimetre
)

// CapFor returns the cap of a bit in a wood: a share of its diameter by the
// wood's hardness or by the shop's own rule, never more than its shank, its
// cutting edge or the bit's own cap allow, rounded down to the shop's scale. A
// cap under the smallest division stays as it is: no rung can be set for it, so
// it serves only what is cut in one pass ([Reaches]). A bit that shapes edges has a
// bite in place of a depth ([biteFor]).
func CapFor(bit *joinery.Bit, wood timber.Wood, shop *joinery.Shop) Cap {
	if bit.Outline != nil {
		return biteFor(bit, wood, shop)
	}
	share, rule := shareFor(wood, shop)
	c := Cap{Depth: bit.True() * measure.Length(share.Num) / measure.Length(share.Den), Rule: rule}
	most := func(depth measure.Length, what string) {
		if depth < c.Depth {
			lower(&c, depth, fmt.Sprintf("%s, the most for %s", shop.Scale.Say(floored(depth, shop.Scale)), what))
		}
	}
	most(deepestPass, "any bit")
	if shop.Gentle {
		most(gentlePass, "gentle passes")
	}
	hard := isHard(wood)
	switch {
	case bit.Shank == 0:
	case bit.Shank <= quarterShank && shop.Gentle:
		most(gentleThinShank, "gentle passes with a 1/4 in shank")
	case bit.Shank <= quarterShank && hard:
		most(thinShankHard, "a 1/4 in shank in hard wood")
	case bit.Shank <= quarterShank:
		most(thinShankSoft, "a 1/4 in shank")
	case bit.Shank <= eightShank && hard:
		most(midShankHard, "an 8 mm shank in hard wood")
	case bit.Shank <= eightShank:
		most(midShankSoft, "an 8 mm shank")
	}
	if bit.Cutting > 0 {
		most(bit.Cutting, "the length of this bit's edge")
	}
	if bit.Cap > 0 {
		lower(&c, bit.Cap, "the cap of this bit in the shop file")
	}
	c.Depth = floored(c.Depth, shop.Scale)
	return c
}

// floored rounds down to the scale what is a division or more.
func floored(depth measure.Length, scale measure.Scale) measure.Length {
	if floor := scale.Floor(depth); floor > 0 {
		return floor
	}
	return depth
}

// Reaches reports whether passes of the cap, set on the scale, come to a depth.
func (c Cap) Reaches(depth measure.Length, scale measure.Scale) bool {
	return depth <= c.Depth || c.Depth >= scale.Division
}

func lower(c *Cap, depth measure.Length, rule string) {
	if depth < c.Depth {
		c.Depth, c.Rule = depth, rule
	}
}

// isHard reports whether thin shanks take less in the wood. A sheet material
// has no hardness: it counts as hard where its own share is a hard wood's.
func isHard(wood timber.Wood) bool {
	if wood.Known() || wood.Share.Num == 0 {
		return !wood.Known() || wood.Hardness >= hardFrom
	}
	return 4*wood.Share.Num < 3*wood.Share.Den
}

// shareFor gives the share of the bit's diameter: a maker's own for the wood,
// the shop's own, the table's for a sheet material, or by hardness.
func shareFor(wood timber.Wood, shop *joinery.Shop) (timber.Share, string) {
	switch {
	case wood.Share.Num > 0 && wood.Group == timber.Own:
		return wood.Share, wood.Share.String() + " of the bit's diameter, your own share for " + wood.Name
	case shop.Share.Num > 0:
		return shop.Share, "the shop's own share of the bit's diameter"
	case wood.Share.Num > 0:
		return wood.Share, wood.Share.String() + " of the bit's diameter in " + wood.Name
	case !wood.Known():
		return timber.Share{Num: 1, Den: 2}, "1/2 of the bit's diameter, the wood being unknown"
	}
	for _, s := range shares {
		if wood.Hardness < s.below {
			return s.share, s.words + " in " + wood.Name
		}
	}
	return timber.Share{Num: 1, Den: 2}, "1/2 of the bit's diameter in " + wood.Name
}
