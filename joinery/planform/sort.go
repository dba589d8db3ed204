package planform

import (
	"strings"
	"sync"

	"fencecard/joinery"
	"fencecard/joinery/joint"
	"fencecard/joinery/planfile/keys"
)

// sort is what the forms of one kind have in common.
type sort struct {
	kind string
	list string // the key of the list it stands in; "" for a plan and a shop
	// keys are those it asks for; of a sort that has kinds, those of a kind.
	keys func(word string) []keys.Key
	// kinds are the kinds it may be of, and isKind reports whether a word is one
	// of them; nil where there are none.
	kinds  func() []string
	isKind func(word string) bool
	of     []string // where its keys stand, for what stands inside them
	name   string   // the key of its name, of a sort without kinds
}

var sorts = []sort{
	{kind: Plan, keys: plain(keys.OfPlan), of: []string{"plan"}, name: "title"},
	{kind: Piece, list: "pieces", keys: plain(keys.OfPiece), of: []string{"piece"}, name: "piece"},
	{kind: Cut, list: "cuts", of: []string{"cut"},
		keys:   kept(isCut, func(word string) []keys.Key { return keys.OfCut(joinery.KindNamed(word)) }),
		kinds:  func() []string { return namesOf(joinery.Kinds, func(k *joinery.Kind) string { return k.Name }) },
		isKind: isCut},
	{kind: Joint, list: "joints", of: []string{"joint"},
		keys:   kept(isJoint, func(word string) []keys.Key { return keys.OfJoint(joint.KindNamed(word)) }),
		kinds:  func() []string { return namesOf(joint.Kinds, func(k *joint.Kind) string { return k.Name }) },
		isKind: isJoint},
	{kind: Shop, keys: plain(keys.OfShop), of: []string{"shop"}},
	{kind: Bit, list: "bits", keys: plain(keys.OfBit), of: []string{"bit"}, name: "bit"},
	{kind: Wood, list: "woods", keys: plain(keys.OfWood), of: []string{"wood"}, name: "wood"},
}

func isCut(word string) bool   { return joinery.KindNamed(word) != nil }
func isJoint(word string) bool { return joint.KindNamed(word) != nil }

// IsKind reports whether a word is one of the kinds of form.
func IsKind(word string) bool { return sortOf(word) != nil }

// sortOf finds a sort by its kind of form, or nil.
func sortOf(kind string) *sort {
	for i := range sorts {
		if sorts[i].kind == kind {
			return &sorts[i]
		}
	}
	return nil
}

// plain keeps keys that are the same for all of a sort.
func plain(all func() []keys.Key) func(string) []keys.Key {
	once := sync.OnceValue(all)
	return func(string) []keys.Key { return once() }
}

// kept keeps the keys of each kind, which a plan asks for again and again. A
// word that is no kind has those that all kinds have.
func kept(isKind func(string) bool, of func(word string) []keys.Key) func(string) []keys.Key {
	var known sync.Map
	return func(word string) []keys.Key {
		if found, ok := known.Load(word); ok {
			return found.([]keys.Key)
		}
		made := of(word)
		if word == "" || isKind(word) {
			known.Store(word, made)
		}
		return made
	}
}

func namesOf[T any](all []T, name func(T) string) []string {
	var names []string
	for _, one := range all {
		names = append(names, name(one))
	}
	return names
}

// key finds a key of the sort and of its kind.
func (s *sort) key(kind, name string) (keys.Key, bool) {
	for _, k := range s.keys(kind) {
		if k.Name == name {
			return k, true
		}
	}
	return keys.Key{}, false
}

// order lists the keys as they come in the text of one, without those inside
// others.
func (s *sort) order(kind string) []string {
	var order []string
	last := ""
	for _, k := range s.keys(kind) {
		outer, _, _ := strings.Cut(k.Name, ".")
		if outer != last {
			order = append(order, outer)
		}
		last = outer
	}
	return append(order, listsIn(s.kind)...)
}

// listsIn are the keys of the lists that something has.
func listsIn(kind string) []string {
	switch kind {
	case Plan:
		return []string{"pieces", "joints"}
	case Piece:
		return []string{"cuts"}
	case Shop:
		return []string{"woods", "bits"}
	}
	return nil
}
