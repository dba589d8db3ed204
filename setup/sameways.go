package setup

import (
	"hash/maphash"
	"reflect"
	"slices"
)

// sameWays keeps each list of ways once, however many channels it makes: a plan
// of many like cuts, each with many ways of many runs, would hold little else.
type sameWays map[uint64][][]Way // by where the fence stands

var fenceSeed = maphash.MakeSeed()

// of returns the list that was kept first of those that are the same.
func (s sameWays) of(ways []Way) []Way {
	var h maphash.Hash
	h.SetSeed(fenceSeed)
	for _, w := range ways {
		for _, r := range w.Steps {
			maphash.WriteComparable(&h, r.NearEdge)
		}
	}
	where := h.Sum64()
	for _, kept := range s[where] {
		if slices.EqualFunc(kept, ways, Way.same) {
			return kept
		}
	}
	s[where] = append(s[where], ways)
	return ways
}

// same reports whether two ways are the same in all that they say.
func (w Way) same(o Way) bool {
	if !slices.Equal(w.Steps, o.Steps) {
		return false
	}
	w.Steps, o.Steps = nil, nil
	return reflect.DeepEqual(w, o)
}
