package keys

import (
	"cmp"
	"slices"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/plantext"
)

// examplesOf shows each key with a value, for the remedy of a fault.
var examplesOf = map[string]string{
	"title":      "title: Boot bench",
	"unit":       "unit: in (or unit: mm)",
	"wood":       "wood: white ash",
	"shop":       "shop: shop.yaml",
	"pieces":     "pieces: and below it - piece: NAME",
	"piece":      "piece: front left leg",
	"count":      "count: 1",
	"size":       "size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}",
	"grain":      "grain: top-bottom",
	"mirror":     "mirror: {of: front left leg, across: left-right}",
	"cuts":       "cuts: and below it - mortise: NAME",
	"of":         "of: front left leg",
	"across":     "across: left-right",
	"left-right": "left-right: 1 5/8",
	"front-back": "front-back: 1 5/8",
	"top-bottom": "top-bottom: 17",
	"in":         "in: right",
	"at":         "at: left",
	"along":      "along: back",
	"width":      "width: 3/8",
	"length":     "length: 7/8",
	"depth":      "depth: 1/4",
	"setback":    "setback: 1/2 from front",
	"span":       "span: 1/2 to 3 from top",
	"cheeks":     "cheeks: {front: 3/16, back: 3/16}",
	"fence":      "fence: front (or fence: either)",
	"ends":       "ends: square",
	"after":      "after: NAME",
	"note":       "note: TEXT",
	"mates":      "mates: PIECE / CUT",
	"by":         "by: hand (or by: saw, by: chisel)",
	"start":      "start: hole",
	"sides":      "sides: {front: outside, top: edge}",
	"crossing":   "crossing: block (or crossing: gauge, crossing: {carriage: 1/2})",
	"carriage":   "carriage: 1/2",
	"passes":     "passes: gentle",
	"raise":      "raise: yes",
	"opening":    "opening: 1 1/2",
	"infeed":     "infeed: 16",
	"outfeed":    "outfeed: 16",
	"reach":      "reach: 8",
	"lift":       "lift: 2",
	"scale":      "scale: 1/64",
	"minutes":    "minutes: {bit: 3, fence: 2, height: 0.5}",
	"stops":      "stops: marks (or stops: blocks)",
	"share":      "share: 1/2",
	"bits":       "bits: and below it - {bit: NAME, diameter: 3/8}",
	"bit":        "bit: three eighths up-cut",
	"kind":       "kind: straight",
	"diameter":   "diameter: 3/8",
	"measured":   "measured: 0.372",
	"cutting":    "cutting: 1 1/4",
	"shank":      "shank: 1/2",
	"plunges":    "plunges: yes",
	"cap":        "cap: 1/8",
	"height":     "height: 0.5",
	"climate":    "climate: {dry: 30, damp: 65, temp: 70F}",
	"dry":        "dry: 30",
	"damp":       "damp: 65",
	"temp":       "temp: 70F",
	"assembly":   "assembly: 8 %",
	"speed":      "speed: 22000",
	"woods":      "woods: and below it - {wood: NAME, hardness: 1200}",
	"hardness":   "hardness: 1200",
	"CR":         "CR: 0.0018",
	"CT":         "CT: 0.0036",
	"shrinkage":  "shrinkage: {radial: 5.6, tangential: 10.5}",
	"radial":     "radial: 5.6",
	"tangential": "tangential: 10.5",
	"moves":      "moves: no",
	"clearances": "clearances: {cheek: 0.005, length: 1/16}",
	"cheek":      "cheek: 0.005",
	"rules":      "rules: {shortest-piece: 12, hand-distance: 4}",
	"base":       "base: 6",

	"shortest-piece": "shortest-piece: 12",
	"hand-distance":  "hand-distance: 4",
	"thinnest-floor": "thinnest-floor: 1/8",

	"joints":    "joints: and below it - mortise and tenon: NAME",
	"into":      "into: front left leg / right",
	"place":     "place: {top: flush, front: 1/8 back}",
	"centred":   "centred: front-back",
	"thickness": "thickness: 3/8",
	"shoulders": "shoulders: {top: 1/2, bottom: 1/4}",
	"through":   "through: yes",
	"deeper":    "deeper: 1/16",
	"haunch":    "haunch: 3/8 at top",
	"play":      "play: 0.006",
	"room":      "room: seasons (or room: 1/8)",
	"glue":      "glue: top",
	"tongue":    "tongue: 1/4 from front",
	"stopped":   "stopped: 3/8 from front",
	"board":     "board: shelf / left, right",
	"edges":     "edges: panel / left, right, top, bottom",
	"repeat":    "repeat: {times: 12, first: 3 from left, every: 2 1/2}",
	"times":     "times: 12",
	"first":     "first: 3 from left",
	"every":     "every: 2 1/2",
	"between":   "between: 3 and 31 from left",
	"stop":      "stop: 1",

	"on":      "on: top front",
	"shape":   "shape: round-over",
	"radius":  "radius: 1/2",
	"leaves":  "leaves: 1/4",
	"pilot":   "pilot: 1/2",
	"outline": "outline: [[0, 3/8], [1/4, 1]]",
	"bite":    "bite: 0.032",

	"screw":      "screw: 3/16",
	"head":       "head: 3/8",
	"head depth": "head depth: 1/2",
	"move":       "move: seasons of 10 (or move: 1/4)",
}

// Example shows a key with a value.
func Example(key string) string {
	if text, ok := examplesOf[key]; ok {
		return text
	}
	if joinery.KindNamed(key) != nil || joint.KindNamed(key) != nil {
		return key + ": NAME"
	}
	return key + ": 3/16" // a side, as of a cheek
}

// ExampleInJoint shows a key with a value as it is meant in a joint.
func ExampleInJoint(key string) string { return cmp.Or(inJoints[key], Example(key)) }

// ExampleIn shows a key with a value as it is meant in a kind of cut; nil is any.
func ExampleIn(key string, kind *joinery.Kind) string {
	if kind == nil {
		return Example(key)
	}
	return cmp.Or(inKinds[kind.Common()][key], Example(key))
}

// inJoints are the keys that mean something else in a joint than in a cut.
var inJoints = map[string]string{
	"tenon":  "tenon: rail / left, right",
	"lap":    "lap: rail / left",
	"groove": "groove: 1/4",
	"length": "length: 3/4",
}

// inKinds are the keys that mean something else in a kind than in other cuts.
var inKinds = map[string]map[string]string{
	joinery.Slot.Name: {
		"at":    "at: 4 from left, 3/4 from front",
		"along": "along: front-back",
	},
}

// otherWords are keys a maker may well try first, and what they are here.
var otherWords = map[string][]string{
	"name":        {"title", "piece", "bit"},
	"units":       {"unit"},
	"timber":      {"wood"},
	"species":     {"wood"},
	"material":    {"wood"},
	"parts":       {"pieces"},
	"boards":      {"pieces"},
	"part":        {"piece"},
	"board":       {"piece"},
	"quantity":    {"count"},
	"qty":         {"count"},
	"number":      {"count"},
	"pcs":         {"count"},
	"dimensions":  {"size"},
	"measures":    {"size"},
	"joints":      {"cuts"},
	"operations":  {"cuts"},
	"face":        {"in"},
	"side":        {"in", "along", "at"},
	"into":        {"in"},
	"end":         {"at"},
	"edge":        {"along"},
	"thickness":   {"width"},
	"wide":        {"width"},
	"deep":        {"depth"},
	"long":        {"length"},
	"inset":       {"setback"},
	"offset":      {"setback"},
	"distance":    {"setback"},
	"position":    {"setback"},
	"from":        {"setback"},
	"range":       {"span"},
	"extent":      {"span"},
	"run":         {"span"},
	"stopped":     {"span"},
	"shoulders":   {"cheeks"},
	"shoulder":    {"cheeks"},
	"comment":     {"note"},
	"remark":      {"note"},
	"notes":       {"note"},
	"before":      {"after"},
	"joins":       {"mates"},
	"mate":        {"mates"},
	"corners":     {"ends"},
	"dia":         {"diameter"},
	"type":        {"kind"},
	"cutters":     {"bits"},
	"cutter":      {"bit"},
	"plunge":      {"plunges"},
	"rpm":         {"speed"},
	"janka":       {"hardness"},
	"clearance":   {"clearances"},
	"humidity":    {"climate"},
	"temperature": {"temp"},
	"rear":        {"back"},
	"behind":      {"back"},
	"above":       {"top"},
	"upper":       {"top"},
	"below":       {"bottom"},
	"lower":       {"bottom"},
	"under":       {"bottom"},
	"underside":   {"bottom"},
	"middle":      {"centred"},
	"right-left":  {"left-right"},
	"back-front":  {"front-back"},
	"bottom-top":  {"top-bottom"},
	"fractions":   {"scale"},
	"division":    {"scale"},
	"times":       {"minutes"},
	"max":         {"cap", "lift"},
}

// otherWordsIn are those that mean something else in a kind than in other cuts.
var otherWordsIn = map[string]map[string][]string{
	joinery.Slot.Name: {
		"width":       {"screw"},
		"shank":       {"screw"},
		"depth":       {"head depth"},
		"counterbore": {"head depth"},
		"centre":      {"at"},
		"center":      {"at"},
		"setback":     {"at"},
		"direction":   {"along"},
		"span":        {"move"},
		"movement":    {"move"},
	},
}

// Meant returns the known key that an unknown one was probably meant to be,
// or "".
func Meant(key string, known []string) string { return MeantIn(key, known, nil) }

// MeantIn is the same among the keys of a kind of cut; nil is any.
func MeantIn(key string, known []string, kind *joinery.Kind) string {
	if near := plantext.Nearest(key, known); near != "" {
		return near
	}
	words := otherWords[key]
	if kind != nil {
		words = slices.Concat(otherWordsIn[kind.Common()][key], words)
	}
	for _, word := range words {
		if slices.Contains(known, word) {
			return word
		}
	}
	return ""
}

// IsKey reports whether a word is a key of a plan or shop, or a kind of cut.
func IsKey(word string) bool {
	_, ok := examplesOf[word]
	return ok || joinery.KindNamed(word) != nil
}
