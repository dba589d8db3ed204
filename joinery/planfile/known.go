package planfile

import "fencecard/joinery"

// planKeys are the keys of a plan.
var planKeys = []string{"title", "unit", "wood", "shop", "climate", "pieces", "joints"}

// pieceKeys are the keys of a piece; one that mirrors another has no size and
// no grain.
var pieceKeys = []string{"piece", "count", "size", "grain", "wood", "sides", "mirror", "cuts"}

// The keys of a shop and of what stands inside it.
var (
	shopKeys = []string{"unit", "fence", "lift", "scale", "minutes", "stops", "share", "bits",
		"speed", "woods", "clearances", "rules", "base", "crossing", "passes", "raise", "opening", "bite"}
	fenceKeys   = []string{"infeed", "outfeed", "reach"}
	minutesKeys = []string{"bit", "fence", "height", "stop", "run", "fit"}
	bitKeys     = []string{"bit", "kind", "diameter", "measured", "cutting", "shank", "plunges", "cap", "speed", "radius", "pilot", "outline"}
	// Of a wood of the shop's own, and of the lists inside a shop.
	woodKeys      = []string{"wood", "hardness", "shrinkage", "CR", "CT", "share", "moves"}
	shrinkageKeys = []string{"radial", "tangential"}
	clearanceKeys = []string{"cheek", "length"}
	ruleKeys      = []string{"shortest-piece", "hand-distance", "thinnest-floor"}
)

// Words that some keys take.
var (
	unitWords   = []string{"in", "mm"}
	endsWords   = []string{"round", "square"}
	startWords  = []string{"hole"}
	passesWords = []string{"gentle"}
	answerWords = []string{"yes", "no"}
	stopsWords  = []string{joinery.Marks.String(), joinery.Blocks.String()}
	pushWords   = []string{joinery.Block.String(), joinery.Gauge.String()}
	shapeWords  = []string{joinery.RoundOver.String(), joinery.Cove.String(), joinery.Chamfer.String()}
)

// Keys that stand inside another.
var (
	mirrorOfKeys = []string{"of", "across"}
	placeKeys    = append(spokenSides(), "centred")
	repeatKeys   = []string{"times", "first", "every", "between"}
	climateKeys  = []string{"dry", "damp", "temp", "assembly"}
	crossingKeys = []string{joinery.Carriage.String()}
)
