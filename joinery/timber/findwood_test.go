package timber

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func TestFindWoodByTheNamesPeopleWrite(t *testing.T) {
	for name, want := range map[string]string{
		"white ash":                 "white ash",
		"Ash, white":                "white ash",
		"ASH (white)":               "white ash",
		"white-ash":                 "white ash",
		"  White  Ash ":             "white ash",
		"Fraxinus americana":        "white ash",
		"hard maple":                "sugar maple",
		"oak, white":                "white oak",
		"red oak":                   "northern red oak",
		"yellow poplar":             "yellow-poplar",
		"yellow-poplar":             "yellow-poplar",
		"tulipwood":                 "yellow-poplar",
		"western red cedar":         "western redcedar",
		"douglas fir":               "Douglas-fir",
		"khaya":                     "African mahogany",
		"English oak":               "European oak",
		"mdf":                       "MDF",
		"medium density fibreboard": "MDF",
		"ply":                       "plywood",
	} {
		w, note, ok := FindWood(name)
		assert.True(t, ok, name)
		assert.Equal(t, want, w.Name, name)
		assert.Empty(t, note, name)
	}
}

func TestFindWoodTakesALooseNameWithAWord(t *testing.T) {
	for name, want := range map[string]string{
		"beech":      "American beech",
		"ash":        "white ash",
		"walnut":     "black walnut",
		"Poplar":     "yellow-poplar",
		"white pine": "eastern white pine",
		"alder":      "red alder",
	} {
		w, note, ok := FindWood(name)
		assert.True(t, ok, name)
		assert.Equal(t, want, w.Name, name)
		assert.Equal(t, name+" is taken as "+want, note)
	}
}

func TestFindWoodDoesNotGuess(t *testing.T) {
	for name, want := range map[string]string{
		"oak":                         "northern red oak, white oak or European oak",
		"maple":                       "red maple, silver maple, sugar maple or European sycamore",
		"Quercus":                     "northern red oak, white oak or European oak",
		"sycamore":                    "American sycamore or European sycamore",
		"mahogany":                    "African mahogany or true mahogany",
		"hickory":                     "pecan or shagbark hickory",
		"Sequoia sempervirens":        "old-growth redwood or young-growth redwood",
		"redwood":                     "old-growth redwood, Scots pine or young-growth redwood",
		"whit ash":                    "white ash",
		"wlanut":                      "black walnut",
		"sugr mapel":                  "sugar maple",
		"as":                          "",
		"":                            "",
		"granite":                     "",
		"---":                         "",
		strings.Repeat("oak", 10_000): "",
	} {
		w, suggestion, ok := FindWood(name)
		assert.False(t, ok, name)
		assert.Equal(t, Wood{}, w)
		assert.Equal(t, want, suggestion, name)
	}
}

func TestFindWoodAmongAMakersOwn(t *testing.T) {
	own := Wood{Name: "bog oak", Group: Own, Hardness: 1500}
	w, note, ok := FindWood("Oak, bog", own)
	assert.True(t, ok)
	assert.Equal(t, own, w)
	assert.Empty(t, note)

	better := Wood{Name: "white ash", Group: Own, Hardness: 1400}
	w, _, _ = FindWood("ash, white", better)
	assert.Equal(t, better, w, "an own wood comes before the table's")

	_, suggestion, _ := FindWood("bgo oak", own)
	assert.Equal(t, "bog oak", suggestion)
}

// Every name in the table leads back to its wood, and to no other.
func TestEveryNameMeansOneWood(t *testing.T) {
	owner := map[string]string{}
	for _, s := range allSpecies() {
		names := append([]string{s.Name}, s.also...)
		if s.Botanical != "" && s.Botanical != "Sequoia sempervirens" { // two rows of one species, by its age
			names = append(names, s.Botanical)
		}
		for _, name := range append(names, s.loosely...) {
			other, taken := owner[woodKey(name)]
			require.False(t, taken, "%s: %s and %s", name, s.Name, other)
			owner[woodKey(name)] = s.Name
			w, _, ok := FindWood(name)
			require.True(t, ok, name)
			require.Equal(t, s.Name, w.Name, name)
		}
	}
}

func FuzzFindWood(f *testing.F) {
	for _, seed := range []string{"white ash", "ash, white", "oak", "(", ",", "\xff", "fir-"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, name string) {
		w, _, ok := FindWood(name)
		if ok != (w.Name != "") {
			t.Fatalf("%q: ok %v with wood %q", name, ok, w.Name)
		}
	})
}
