package model

// union joins numbers into groups.
type union []int // of every number, one that leads nearer to its group's least

// NewUnion has every one in a group of its own.
func NewUnion(n int) union {
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

// Join puts two into one group.
func (u union) Join(i, j int) {
	a, b := u.find(i), u.find(j)
	u[max(a, b)] = min(a, b)
}

// Groups lists the groups by their least numbers.
func (u union) Groups() [][]int {
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
