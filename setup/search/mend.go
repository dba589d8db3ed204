package search

import (
	"cmp"
	"slices"
)

const (
	mostMended = 40      // kinds settled anew at one time
	mendSteps  = 300_000 // for one time
	mendShare  = 3       // one part in so many of the steps that are left goes into mending
)

// mend takes the ways of the kinds around one key back and settles them anew,
// the rest standing, key by key until that helps no more. Where there are few
// kinds the proof does as well by itself.
func (u *unordered) mend() {
	if len(u.m.kinds) <= mostMended {
		return
	}
	whole := u.b.part(u.b.left / mendShare)
	defer u.b.giveBack(whole)
	c := newChooser(u.m, whole)
	for k, w := range u.choice {
		c.t.add(&u.m.kinds[k].ways[w])
	}
	users := u.users()
	for again := true; again; {
		again = false
		for key := range users {
			c.b = whole.part(mendSteps)
			if u.mendAt(c, key, users[key]) {
				again = true
			}
			whole.giveBack(c.b)
			if whole.ended != Through || u.bound >= u.cost {
				return
			}
		}
	}
}

// users lists, by key, the kinds with a choice that may use it.
func (u *unordered) users() [][]int {
	users := make([][]int, len(u.m.keys))
	for k := range u.m.kinds {
		if len(u.m.kinds[k].ways) == 1 {
			continue
		}
		for w := range u.m.kinds[k].ways {
			for _, r := range u.m.kinds[k].ways[w].runs {
				key := u.m.stations[r.station].key
				if at := users[key]; len(at) == 0 || at[len(at)-1] != k {
					users[key] = append(users[key], k)
				}
			}
		}
	}
	return users
}

// mendAt settles kinds that may use a key anew, those first that use it now.
// The tally holds the whole choice.
func (u *unordered) mendAt(c *chooser, key int, users []int) bool {
	kinds := slices.Clone(users)
	slices.SortStableFunc(kinds, func(a, b int) int { return cmp.Compare(u.away(a, key), u.away(b, key)) })
	kinds = kinds[:min(len(kinds), mostMended)]
	before := c.t.cost()
	all := u.m.all()
	var und []pending
	for _, k := range kinds {
		c.t.remove(&u.m.kinds[k].ways[u.choice[k]])
		und = append(und, all[k])
	}
	rest := c.t.cost()
	f := c.solve(und, before-rest)
	if f.picks != nil {
		u.keep(f.picks, rest+f.cost)
	}
	for _, k := range kinds {
		c.t.add(&u.m.kinds[k].ways[u.choice[k]])
	}
	return u.cost < before
}

// away is 0 for a kind that uses the key now, else 1.
func (u *unordered) away(kind, key int) int {
	for _, r := range u.m.kinds[kind].ways[u.choice[kind]].runs {
		if u.m.stations[r.station].key == key {
			return 0
		}
	}
	return 1
}
