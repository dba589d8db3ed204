package keys_test

import (
	"strings"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/keys"

	"github.com/stretchr/testify/assert"
)

// allKeys are the keys of everything that has a form, by what it is.
func allKeys() map[string][]keys.Key {
	all := map[string][]keys.Key{
		"plan": keys.OfPlan(), "piece": keys.OfPiece(), "shop": keys.OfShop(), "bit": keys.OfBit(), "wood": keys.OfWood(),
	}
	for _, k := range joinery.Kinds {
		all["cut "+k.Name] = keys.OfCut(k)
	}
	for _, k := range joint.Kinds {
		all["joint "+k.Name] = keys.OfJoint(k)
	}
	return all
}

// A form asks for every key in words of its own: a key without a row in keys.tsv is
// found here.
func TestEveryKeyIsAskedForInWords(t *testing.T) {
	for what, known := range allKeys() {
		seen := map[string]bool{}
		for _, k := range known {
			assert.False(t, seen[k.Name], "%s is asked for twice of a %s", k.Name, what)
			seen[k.Name] = true
			assert.NotEqual(t, strings.ReplaceAll(k.Name, ".", " "), k.Asks, "%s of a %s has no row in keys.tsv", k.Name, what)
			assert.False(t, k.Needed && k.LeftOut != "", "%s of a %s is needed, and has a value where it is left out", k.Name, what)
			assert.LessOrEqual(t, len(k.Asks), 80, k.Asks)
			assert.False(t, k.Needed && k.Missing == "", "%s of a %s is needed, and keys.tsv does not say what to fill in where it is empty", k.Name, what)
		}
	}
}

// The keys of a kind are all those that its cuts may have, in the order of its
// example.
func TestKeysOfAKind(t *testing.T) {
	for _, k := range joinery.Kinds {
		var names []string
		for _, key := range keys.OfCut(k) {
			outer, _, _ := strings.Cut(key.Name, ".")
			names = append(names, outer)
		}
		for _, key := range k.Keys() {
			assert.Contains(t, names, key, k.Name)
		}
	}
	var order []string
	for _, key := range keys.OfCut(&joinery.Mortise)[:5] {
		order = append(order, key.Name)
		assert.NotEmpty(t, key.Example, key.Name)
	}
	assert.Equal(t, []string{"in", "width", "setback", "span", "depth"}, order)
}

// Every word that a form offers is one that the reader takes.
func TestWordsThatAreOffered(t *testing.T) {
	const plan = "unit: in\nshop: {bits: [{bit: half round-over, kind: round-over, radius: 1/2, pilot: 1/2, diameter: 1 1/2}, {bit: half, diameter: 1/2}]}\npieces:\n"
	tried := 0
	reads := func(what, text, word string) {
		tried++
		_, err := planfile.Read("plan.yaml", []byte(text), nil)
		if err == nil {
			return
		}
		for _, says := range []string{`"` + word + `" is no`, "is no length", "takes one value", "has no key"} {
			assert.NotContains(t, err.Error(), says, "%s: %s", what, word)
		}
	}
	for what, known := range allKeys() {
		of, kind, _ := strings.Cut(what, " ")
		for _, k := range known {
			for _, word := range k.Words {
				value := k.Name + ": " + word
				if outer, inner, dotted := strings.Cut(k.Name, "."); dotted {
					value = outer + ": {" + inner + ": " + word + "}"
				}
				switch {
				case k.Shape == keys.Spots:
					continue // a piece goes before it
				case of == "plan":
					reads(what, value+"\npieces: [{piece: a}]\n", word)
				case of == "piece":
					reads(what, plan+"- {piece: a, "+value+"}\n", word)
				case of == "cut":
					reads(what, plan+"- {piece: a, size: {left-right: 9, front-back: 9, top-bottom: 9}, cuts: [{"+kind+": a, "+value+"}]}\n", word)
				case of == "joint":
					reads(what, plan+"- {piece: a, size: {left-right: 9, front-back: 9, top-bottom: 9}}\njoints: [{"+kind+": a, "+value+"}]\n", word)
				case of == "shop":
					reads(what, "shop: {"+value+"}\npieces: [{piece: a}]\n", word)
				default:
					reads(what, "shop: {"+of+"s: [{"+of+": a, "+value+"}]}\npieces: [{piece: a}]\n", word)
				}
			}
		}
	}
	assert.Greater(t, tried, 300)
}
