package joinery

import (
	"cmp"
	"slices"
	"sync"

	"fencecard/joinery/plantext"
	"fencecard/joinery/timber"
)

// Kind is a kind of cut: what it is called, which keys it takes, what it means
// in the work, and how it comes down to channels. A new kind is one file and one
// row of Kinds: nothing asks which kind a cut is, only what its kind means.
type Kind struct {
	Name     string
	Says     string             // what it is, for one who does not know the word
	Also     []string           // other words for it
	Required []string           // keys it needs
	Optional []string           // keys it may have, besides CommonKeys
	Refuses  map[string]Refusal // those of CommonKeys that mean nothing for it; repeat among them where it has neither setback nor span
	Example  string             // keys and values as a maker would write them

	Across  bool // runs across the grain where the plan does not say
	Grained bool // its word says which way it runs: across the grain, or with it
	Gauged  bool // is set out from the nearer face

	Walled   bool // has a wall on either side
	Edge     bool // takes an edge away, so that its width is taken off the stock too
	Receives bool // a tenon, a tongue or a board goes into it
	Encloses bool // and is held all round, so that what runs into it spoils the joint
	Enters   bool // is a tongue that goes into what receives
	Laps     bool // lies on another that laps
	Shapes   bool // shapes an edge by a bit with an outline
	Screwed  bool // a screw goes through it, so that it is said by its centre

	Deepest timber.Share // of the stock's thickness that it may take
	Through bool         // or all of it

	lay    func(*layout)
	common string // the name it goes by, where Name is another word for it
}

// Refusal is why a kind has no use for a key, and what to write instead, "" for
// nothing.
type Refusal struct{ Why, Instead string }

// CommonKeys are the keys that any cut may carry.
var CommonKeys = []string{"fence", "ends", "after", "note", "mates", "by", "bit", "start", "repeat"}

// Kinds lists the kinds of cut.
var Kinds = []*Kind{&Mortise, &Groove, &Dado, &Rabbet, &Lap, &Tenon,
	&Slot, &Profile, &RaisedPanel,
}

// KindNamed returns the kind with that name, or nil. A kind that is named by
// another word for it is called by that word: a maker reads what was written.
func KindNamed(word string) *Kind { return kindsByWord()[word] }

var kindsByWord = sync.OnceValue(func() map[string]*Kind {
	by := map[string]*Kind{}
	for _, k := range Kinds {
		by[k.Name] = k
		for _, word := range k.Also {
			called := *k
			called.Name, called.common = word, k.Name
			by[word] = &called
		}
	}
	return by
})

// Common gives the name the kind goes by in files that programs read, whatever
// word the maker used.
func (k *Kind) Common() string { return cmp.Or(k.common, k.Name) }

// Keys lists every key the kind takes.
func (k *Kind) Keys() []string {
	keys := slices.Concat(k.Required, k.Optional, CommonKeys)
	return slices.DeleteFunc(keys, func(key string) bool {
		_, refused := k.Refuses[key]
		return refused
	})
}

// Has reports whether the kind takes a key.
func (k *Kind) Has(key string) bool { return slices.Contains(k.Keys(), key) }

// KindsThat lists the names of the kinds of which something is true, as in
// "mortise, groove or dado".
func KindsThat(is func(*Kind) bool) string {
	var names []string
	for _, k := range Kinds {
		if is(k) {
			names = append(names, k.Name)
		}
	}
	return plantext.List(names, "or")
}

// String gives the word the maker used.
func (k *Kind) String() string { return k.Name }
