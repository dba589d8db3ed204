package search

// union joins numbers into groups.
type union []int // of every number, one that leads nearer to its group's least

func newUnion(n int) union {
	u := make(union, n)
	for i := range u {
		u[i] = i
	}
	return u
}

func (u union) find(i int) int {
	for u[i] != i {
		u[i] = u[u[i]]
		i = u[i]
	}
	return i
}

func (u union) join(i, j int) {
	a, b := u.find(i), u.find(j)
	u[max(a, b)] = min(a, b)
}

// groups lists the groups by their least numbers.
func (u union) groups() [][]int {
	at := make([]int, len(u)) // of a least number, its group, plus one
	var all [][]int
	for i := range u {
		least := u.find(i)
		if at[least] == 0 {
			all = append(all, nil)
			at[least] = len(all)
		}
		all[at[least]-1] = append(all[at[least]-1], i)
	}
	return all
}
