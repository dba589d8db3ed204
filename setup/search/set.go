package search

// set is a set of errands.
type set []uint64

func newSet(n int) set { return make(set, (n+63)/64) }

func (s set) add(i int)      { s[i/64] |= 1 << (i % 64) }
func (s set) has(i int) bool { return s[i/64]&(1<<(i%64)) != 0 }

// join adds the members of t.
func (s set) join(t set) {
	for i := range s {
		s[i] |= t[i]
	}
}

func (s set) empty() bool {
	for _, w := range s {
		if w != 0 {
			return false
		}
	}
	return true
}

// hasAll reports whether all of a list are members.
func (s set) hasAll(list []int) bool {
	for _, i := range list {
		if !s.has(i) {
			return false
		}
	}
	return true
}

// key gives the set as a key of a map.
func (s set) key() string {
	b := make([]byte, 0, 8*len(s))
	for _, w := range s {
		for shift := 0; shift < 64; shift += 8 {
			b = append(b, byte(w>>shift))
		}
	}
	return string(b)
}
