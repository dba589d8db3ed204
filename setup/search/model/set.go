package model

// Set is a set of errands.
type Set []uint64

// NewSet is an empty set for that many.
func NewSet(n int) Set { return make(Set, (n+63)/64) }

// Add makes it a member.
func (s Set) Add(i int) { s[i/64] |= 1 << (i % 64) }

// Has reports whether it is a member.
func (s Set) Has(i int) bool { return s[i/64]&(1<<(i%64)) != 0 }

// Join adds the members of t.
func (s Set) Join(t Set) {
	for i := range s {
		s[i] |= t[i]
	}
}

// Empty reports whether there is no member.
func (s Set) Empty() bool {
	for _, w := range s {
		if w != 0 {
			return false
		}
	}
	return true
}

// HasAll reports whether all of a list are members.
func (s Set) HasAll(list []int) bool {
	for _, i := range list {
		if !s.Has(i) {
			return false
		}
	}
	return true
}

// Key gives the set as a key of a map.
func (s Set) Key() string {
	b := make([]byte, 0, 8*len(s))
	for _, w := range s {
		for shift := 0; shift < 64; shift += 8 {
			b = append(b, byte(w>>shift))
		}
	}
	return string(b)
}
