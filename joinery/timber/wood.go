package timber

import "strings"

// Wood is one species or sheet material, as a row of the embedded table or as
// a maker's own entry in the shop file. Figures that are 0 are not known.
type Wood struct {
	Name      string // as printed: "white ash"; "" when the plan names none
	Botanical string // "Fraxinus americana"; "" for sheet materials and own woods
	Group     WoodGroup

	Hardness     float64 // side hardness in lbf (Janka, at 12 % moisture)
	HardnessFrom Origin

	ShrinkR, ShrinkT float64 // radial and tangential shrinkage, green to ovendry, percent
	ShrinkFrom       Origin

	CR, CT float64 // change of dimension, radial and tangential, as a share for 1 % of moisture
	CFrom  Origin

	Still bool   // does not change its size with the seasons, as plywood and MDF
	Share Share  // depth of one pass as a share of the bit, whatever the hardness; zero: by hardness
	Note  string // what a reader of the figures should know
}

// Known reports whether the wood has a hardness to choose passes by.
func (w Wood) Known() bool { return w.Hardness > 0 }

// Moves reports whether the wood changes its size with the seasons; an unknown
// wood does.
func (w Wood) Moves() bool { return !w.Still }

// String gives the wood's name, or "unknown wood".
func (w Wood) String() string {
	if w.Name == "" {
		return "unknown wood"
	}
	return w.Name
}

// WoodGroup is the part of the table a wood stands in.
type WoodGroup string

// The groups. Imported is the handbook's word for woods from outside North
// America. A maker's own wood is of the group Own.
const (
	Hardwood WoodGroup = "hardwood"
	Softwood WoodGroup = "softwood"
	Imported WoodGroup = "imported"
	Sheet    WoodGroup = "sheet"
	Own      WoodGroup = "own"
)

// Origin is where a figure comes from: "table 5-3" of the Wood Handbook
// (FPL-GTR-190), "memory" for one that was recalled, "shop file", or "" where
// there is no figure.
type Origin string

// The origins that are not a table.
const (
	Memory   Origin = "memory"
	ShopFile Origin = "shop file"
)

// Published reports whether the figure was read in a public copy of the table.
func (o Origin) Published() bool { return strings.HasPrefix(string(o), "table ") }

// unknownWood stands in for a wood that the plan does not name: of the woods of
// the table it moves most.
const unknownWood = "American beech"

// Reckoned returns the wood, or the one that stands in for an unknown.
func (w Wood) Reckoned() Wood {
	if w.Name == "" {
		w, _, _ = FindWood(unknownWood)
	}
	return w
}
