package search

import "fencecard/joinery"

// Two fence distances are in conflict where some errand at each waits for one
// at the other: one of the two must be set twice. So it is with two bits.

// conflict is the errands on either side of one: while some of each are not
// made yet, something must be set once more.
type conflict struct {
	a, b     int // the keys or bits
	atA, atB set // errands at a that some at b wait for, and the other way round
}

// alive reports whether the conflict is still ahead.
func (c *conflict) alive(done set) bool { return !c.atA.within(done) && !c.atB.within(done) }

// findConflicts lists the conflicts between any of n places; place tells where
// a station is. After holds all that wait for each errand.
func (e *errands) findConflicts(n int, place func(station) int, after []set) []conflict {
	at := make([]set, n) // errands by place
	for x := range e.list {
		p := place(e.m.stations[e.list[x].station])
		if at[p] == nil {
			at[p] = newSet(len(e.list))
		}
		at[p].add(x)
	}
	awaited := func(a, b int) set {
		found := newSet(len(e.list))
		for x := range e.list {
			if at[a].has(x) && after[x].meets(at[b]) {
				found.add(x)
			}
		}
		return found
	}
	var all []conflict
	for a := range at {
		for b := a + 1; b < n && at[a] != nil; b++ {
			if at[b] == nil {
				continue
			}
			if c := (conflict{a, b, awaited(a, b), awaited(b, a)}); !c.atA.empty() && !c.atB.empty() {
				all = append(all, c)
			}
		}
	}
	return all
}

// conflicts is what the conflicts that are still ahead cost at the least, beyond
// what the tails tell: a place that a chain comes back to is set twice anyhow.
func (e *errands) conflicts(l *leg) joinery.Time {
	minutes := e.m.problem.Minutes
	keys := e.onceMore(l, e.keyConflicts, e.usedKeys, func(key int) bool {
		return e.most(l, e.ofKey[key], func(t tail) int { return t.stays }) > 1
	})
	bits := e.onceMore(l, e.bitConflicts, e.usedBits, func(bit int) bool {
		return e.most(l, e.ofBit[bit], func(t tail) int { return t.bits }) > 1
	})
	return joinery.Time(keys)*minutes.Fence + joinery.Time(bits)*minutes.Bit
}

// onceMore counts how many of some places must be set once more at the least:
// conflicts that are still ahead, no place in two of them, and none that is set
// twice anyhow.
func (e *errands) onceMore(l *leg, conflicts []conflict, used []bool, twice func(place int) bool) int {
	clear(used)
	n := 0
	for i := range conflicts {
		c := &conflicts[i]
		if !used[c.a] && !used[c.b] && c.alive(l.done) && !twice(c.a) && !twice(c.b) {
			used[c.a], used[c.b] = true, true
			n++
		}
	}
	return n
}
