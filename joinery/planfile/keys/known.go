// Package keys knows what may be written in a plan and in a shop file: the keys of
// each thing, the words they take, an example of each, and what somebody likely
// meant who wrote another one. Forms ask for a key by the same tables.
package keys

import "fencecard/joinery"

// Plan are the keys of a plan.
var Plan = []string{"title", "unit", "wood", "shop", "climate", "pieces", "joints"}

// Piece are the keys of a piece; one that mirrors another has no size and
// no grain.
var Piece = []string{"piece", "count", "size", "grain", "wood", "sides", "mirror", "cuts"}

// The keys of a shop, of what stands inside it, and of the things it lists.
var (
	Shop = []string{"unit", "fence", "lift", "scale", "minutes", "stops", "share", "bits",
		"speed", "woods", "clearances", "rules", "base", "crossing", "passes", "raise", "opening", "bite"}
	Fence      = []string{"infeed", "outfeed", "reach"}
	Minutes    = []string{"bit", "fence", "height", "stop", "pass", "fit"}
	Bit        = []string{"bit", "kind", "diameter", "measured", "cutting", "shank", "plunges", "cap", "speed", "radius", "pilot", "outline"}
	Wood       = []string{"wood", "hardness", "shrinkage", "CR", "CT", "share", "moves"}
	Shrinkage  = []string{"radial", "tangential"}
	Clearances = []string{"cheek", "length"}
	Rules      = []string{"shortest-piece", "hand-distance", "thinnest-floor"}
)

// Words that some keys take.
var (
	UnitWords   = []string{"in", "mm"}
	EndsWords   = []string{"round", "square"}
	StartWords  = []string{"hole"}
	PassesWords = []string{"gentle"}
	AnswerWords = []string{"yes", "no"}
	StopsWords  = []string{joinery.Marks.String(), joinery.Blocks.String()}
	PushWords   = []string{joinery.Block.String(), joinery.Gauge.String()}
	ShapeWords  = []string{joinery.RoundOver.String(), joinery.Cove.String(), joinery.Chamfer.String()}
)

// Keys that stand inside another.
var (
	Mirror   = []string{"of", "across"}
	Place    = append(spokenSides(), "centred")
	Repeat   = []string{"times", "first", "every", "between"}
	Climate  = []string{"dry", "damp", "temp", "assembly"}
	Crossing = []string{joinery.Carriage.String()}
)
