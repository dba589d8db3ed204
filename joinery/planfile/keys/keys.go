package keys

import (
	_ "embed"
	"slices"
	"strings"
	"sync"

	"fencecard/joinery"
	"fencecard/joinery/joint"
)

// Key is one key of a plan as a form asks for it.
type Key struct {
	Name    string // with those it stands inside: "size.left-right"
	Asks    string // what it is, in a few words
	Example string // a value as a maker would write it; "" for none
	LeftOut string // what holds where it is left out; "" where nothing does
	Words   []string
	Open    bool // values besides Words may stand there
	Shape   Shape
	From    string // of what the names are that may stand there: Pieces, Cuts, Bits, Woods, or ""
	Needed  bool
	Missing string // what is said of one that is needed and left empty
}

// Shape is how the value of a key is written.
type Shape string

// The shapes of a value.
const (
	OneText  Shape = ""        // one text
	Names    Shape = "names"   // a name, or several in a list
	Spots    Shape = "spots"   // PIECE / SIDE, several with commas
	FromSide Shape = "from"    // a distance from a side
	Brackets Shape = "corners" // pairs in brackets inside brackets
)

// What the names are that a key may take.
const (
	Pieces = "pieces"
	Cuts   = "cuts" // of the same piece
	Bits   = "bits"
	Woods  = "woods"
)

// The keys that stand inside another, by where they stand, or anywhere.
var (
	insideAnyKey = map[string][]string{"repeat": Repeat}
	insideKeyOf  = map[string]map[string][]string{
		"plan":  {"climate": Climate},
		"piece": {"size": DimensionNames(), "sides": spokenSides(), "mirror": Mirror},
		"cut":   {"cheeks": spokenSides()},
		"joint": {"place": Place, "shoulders": spokenSides()},
		"shop":  {"fence": Fence, "minutes": Minutes, "clearances": Clearances, "rules": Rules, "crossing": Crossing},
		"wood":  {"shrinkage": Shrinkage},
	}
	// alsoText are keys that have keys inside, or one text instead.
	alsoText = []string{"cheeks", "place", "crossing"}
	// things are keys with lists, or with a shop, which have forms of their own.
	things = []string{"pieces", "cuts", "joints", "bits", "woods"}
)

// taking says what may stand at a key.
type taking struct {
	words []string
	open  bool
	shape Shape
	from  string
}

// takings are what may stand at keys, by where they stand; those of any place
// begin with a blank.
var takings = sync.OnceValue(func() map[string]taking {
	of := map[string]taking{
		"plan unit": {words: UnitWords}, "shop unit": {words: UnitWords},
		" wood": {from: Woods, open: true}, "wood wood": {},
		"piece grain": {words: DimensionNames()}, "piece mirror.of": {from: Pieces},
		"piece mirror.across": {words: DimensionNames(), shape: Names},
		"cut in":              {words: SideNames()}, "cut at": {words: SideNames()}, "cut along": {words: SideNames()},
		"slot in": {words: SideNames()}, "slot along": {words: DimensionNames()},
		"cut on": {words: arrises()}, "cut shape": {words: ShapeWords},
		"cut setback": {words: []string{"centred"}, open: true, shape: FromSide}, " repeat.first": {shape: FromSide}, "cut reach": {words: []string{"full"}, open: true},
		" fence": {words: append(SideNames(), "either")}, " ends": {words: EndsWords}, " start": {words: StartWords},
		" after": {from: Cuts, shape: Names}, "cut mates": {from: Pieces, open: true}, "slot mates": {from: Pieces, open: true},
		" bit": {from: Bits}, "bit bit": {}, " by": {words: []string{"hand", "saw", "chisel"}, open: true},
		"joint into":  {from: Pieces, words: SideNames(), shape: Spots},
		"joint place": {words: []string{"centred"}}, "joint place.centred": {words: DimensionNames(), shape: Names},
		"joint through": {words: AnswerWords}, "joint room": {words: []string{"seasons"}, open: true}, "joint glue": {words: SideNames()},
		"shop stops": {words: StopsWords}, "shop passes": {words: PassesWords}, "shop raise": {words: AnswerWords}, "shop crossing": {words: PushWords},
		"bit kind": {words: joinery.BitKindNames()}, "bit plunges": {words: AnswerWords}, "bit outline": {shape: Brackets},
		"wood moves": {words: AnswerWords},
	}
	for _, s := range SideNames() {
		of["joint place."+s] = taking{words: []string{"flush"}, open: true}
	}
	for _, k := range joint.Kinds {
		of["joint "+k.Half] = taking{from: Pieces, words: SideNames(), shape: Spots}
	}
	return of
})

//go:embed keys.tsv
var keyTable string

// asked is a row of the table of keys. The example is for a key that means
// something else elsewhere.
type asked struct{ asks, leftOut, example, missing string }

var askedBy = sync.OnceValue(func() map[string]asked {
	rows := map[string]asked{}
	for line := range strings.Lines(keyTable) {
		cells := strings.Split(strings.TrimSuffix(line, "\n"), "\t")
		if strings.HasPrefix(line, "#") || len(cells) < 4 {
			continue
		}
		row := asked{asks: cells[2], leftOut: cells[3]}
		if len(cells) > 4 {
			row.example = cells[4]
		}
		if len(cells) > 5 {
			row.missing = cells[5]
		}
		rows[cells[0]+" "+cells[1]] = row
	}
	return rows
})

// sought finds what is known of a key: where it stands, then of any place.
func sought[T any](rows map[string]T, of []string, key string) (found T, ok bool) {
	for _, where := range append(of, "") {
		if found, ok = rows[where+" "+key]; ok {
			return found, true
		}
	}
	return found, false
}

// OfPlan are the keys of a plan's own.
func OfPlan() []Key { return keysOf([]string{"plan"}, Plan, []string{"unit"}, nil) }

// OfPiece are the keys of a piece. One that mirrors another needs no size.
func OfPiece() []Key {
	needs := []string{"piece"}
	for _, d := range DimensionNames() {
		needs = append(needs, "size."+d)
	}
	return keysOf([]string{"piece"}, Piece, needs, nil)
}

// OfCut are the keys of a kind of cut besides its kind and name; of nil those
// that any cut may have.
func OfCut(k *joinery.Kind) []Key {
	if k == nil {
		return keysOf([]string{"cut"}, joinery.CommonKeys, nil, nil)
	}
	of := []string{k.Common(), "cut"}
	known := k.Keys()
	examples := exampleValues(k.Example, known)
	return keysOf(of, inOrder(k.Example, known), k.Required, examples)
}

// OfJoint are the keys of a kind of joint besides its kind and name; of nil
// those that any joint may have.
func OfJoint(k *joint.Kind) []Key {
	if k == nil {
		return keysOf([]string{"joint"}, joint.CommonWords, nil, nil)
	}
	known := k.Keys()
	needs := append([]string{k.Half, "into", "place"}, k.Needs...)
	return keysOf([]string{"joint"}, inOrder(k.Example, known), needs, exampleValues(k.Example, known))
}

// OfShop are the keys of a shop.
func OfShop() []Key { return keysOf([]string{"shop"}, Shop, nil, nil) }

// OfBit are the keys of a bit.
func OfBit() []Key { return keysOf([]string{"bit"}, Bit, []string{"bit", "diameter"}, nil) }

// OfWood are the keys of a wood of the shop's own.
func OfWood() []Key { return keysOf([]string{"wood"}, Wood, []string{"wood"}, nil) }

// keysOf makes a list of keys, those inside others behind them. Things that
// have forms of their own are none.
func keysOf(of, known, needs []string, examples map[string]string) []Key {
	var keys []Key
	add := func(name string) {
		k := Key{Name: name, Needed: slices.Contains(needs, name), Example: examples[name]}
		row, ok := sought(askedBy(), of, name)
		if k.Asks, k.LeftOut = row.asks, row.leftOut; !ok {
			k.Asks = strings.ReplaceAll(name, ".", " ")
		}
		t, _ := sought(takings(), of, name)
		k.Words, k.Open, k.Shape, k.From = t.words, t.open, t.shape, t.from
		if row.example != "" {
			k.Example = row.example
		} else if k.Example == "" && len(k.Words) == 0 {
			k.Example = exampleValue(name)
		}
		if k.Needed {
			k.LeftOut, k.Missing = "", row.missing
		}
		keys = append(keys, k)
	}
	for _, key := range known {
		inner := Inside(of, key)
		if slices.Contains(things, key) || slices.ContainsFunc(keys, func(k Key) bool { return k.Name == key }) {
			continue
		}
		if inner == nil || slices.Contains(alsoText, key) {
			add(key)
		}
		for _, name := range inner {
			add(key + "." + name)
		}
	}
	return keys
}

// Inside lists the keys that may stand inside a key.
func Inside(of []string, key string) []string {
	for _, where := range of {
		if inner := insideKeyOf[where][key]; inner != nil {
			return inner
		}
	}
	return insideAnyKey[key]
}

// exampleValue is the value in the example of a key, or in that of the key it
// stands inside.
func exampleValue(key string) string {
	outer, last, _ := strings.Cut(key, ".")
	if last == "" {
		last = outer
	} else if value := exampleValues(examplesOf[outer], []string{outer})[key]; value != "" {
		return value
	}
	text, ok := examplesOf[last]
	if !ok {
		return ""
	}
	text = strings.ReplaceAll(text, last+": ", "")
	if strings.HasPrefix(text, "{") || text == "NAME" || text == "TEXT" {
		return ""
	}
	return text
}

// inOrder lists keys as they come in an example, and then the others.
func inOrder(example string, known []string) []string {
	keys := slices.Clone(known)
	slices.SortStableFunc(keys, func(a, b string) int { return placeIn(example, a) - placeIn(example, b) })
	return keys
}

// placeIn is where a key stands in an example, its end for one that does not.
func placeIn(example, key string) int {
	for at := 0; ; {
		next := strings.Index(example[at:], key+": ")
		if next < 0 {
			return len(example)
		}
		if at += next; at == 0 || strings.HasSuffix(example[:at], ", ") && strings.Count(example[:at], "{") == strings.Count(example[:at], "}") {
			return at
		}
		at += len(key)
	}
}

// exampleValues takes an example apart into the values of its keys.
func exampleValues(example string, known []string) map[string]string {
	values := map[string]string{}
	var starts []int
	for _, key := range known {
		if at := placeIn(example, key); at < len(example) {
			starts = append(starts, at)
		}
	}
	slices.Sort(starts)
	for i, at := range starts {
		end := len(example)
		if i+1 < len(starts) {
			end = starts[i+1]
		}
		key, value, _ := strings.Cut(strings.TrimSuffix(strings.TrimSpace(example[at:end]), ","), ": ")
		if inner, braces := strings.CutPrefix(value, "{"); braces {
			for _, one := range strings.Split(strings.TrimSuffix(inner, "}"), ", ") {
				name, inside, _ := strings.Cut(one, ": ")
				values[key+"."+name] = inside
			}
			continue
		}
		values[key] = strings.Trim(value, "[]")
	}
	return values
}

// Missing is what a form says of a key of a thing that is needed and left empty.
func Missing(of, key string) string {
	row, _ := sought(askedBy(), []string{of}, key)
	return row.missing
}

// Asks is what a form asks for a key of a thing, in a few words; the key itself
// where nothing is known of it.
func Asks(of, key string) string {
	if row, ok := sought(askedBy(), []string{of}, key); ok {
		return row.asks
	}
	return key
}
