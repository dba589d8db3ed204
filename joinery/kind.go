package joinery

import "slices"

// Kind is a kind of cut: what it is called, which keys it takes, and how it
// comes down to channels. A new kind is one file and one row of Kinds.
type Kind struct {
	Name     string
	Also     []string // other words for it
	Required []string // keys it needs
	Optional []string // keys it may have, besides CommonKeys
	Across   bool     // runs across the grain where the plan does not say
	Example  string   // keys and values as a maker would write them
	lay      func(*layout)
}

// CommonKeys are the keys that any cut may carry.
var CommonKeys = []string{"fence", "ends", "after", "note", "mates", "by"}

// Kinds lists the kinds of cut.
var Kinds = []*Kind{&Mortise, &Groove, &Dado, &Rabbet, &Lap, &Tenon}

// KindNamed returns the kind with that name or other word, or nil.
func KindNamed(word string) *Kind {
	for _, k := range Kinds {
		if k.Name == word || slices.Contains(k.Also, word) {
			return k
		}
	}
	return nil
}

// Keys lists every key the kind takes.
func (k *Kind) Keys() []string {
	return slices.Concat(k.Required, k.Optional, CommonKeys)
}

// Has reports whether the kind takes a key.
func (k *Kind) Has(key string) bool { return slices.Contains(k.Keys(), key) }

// String gives the kind's name.
func (k *Kind) String() string { return k.Name }
