package model

import (
	"encoding/binary"
	"slices"

	"fencecard/joinery"
)

// numberKinds makes jobs that are alike one kind: whatever is best for one may
// be done with all of them together. Jobs are alike if they have the same ways,
// but for how many pieces they are, and wait, and are waited for, alike. Jobs that
// wait for one another are also alike, as a whole group, to another group.
func (m *Model) numberKinds() {
	jobs := m.Problem.Jobs
	l := newLikeness(jobs)
	together := NewUnion(len(jobs))
	for j := range jobs {
		for _, before := range jobs[j].After {
			together.Join(j, before)
		}
	}
	stationOf := m.stationIndex()
	kindOf := make([]int, len(jobs))
	seen := map[string][]int{} // the kinds of a group, by what it looks like
	for _, group := range together.Groups() {
		looks := l.group(group)
		kinds, known := seen[looks]
		if !known {
			kinds = m.newKinds(l, group, stationOf)
			seen[looks] = kinds
		}
		for i, j := range group {
			kindOf[j] = kinds[i]
			k := &m.Kinds[kinds[i]]
			k.Jobs, k.pieces = append(k.Jobs, j), k.pieces+l.pieces[j]
		}
		if !known {
			m.tie(l, group, kindOf)
		}
	}
}

// newKinds makes the kinds of one group and lists the kind of each job.
func (m *Model) newKinds(l *likeness, group []int, stationOf map[stationKey]int) []int {
	at := make(map[int]int, len(group)) // the kind of the first of jobs that are alike
	kinds := make([]int, len(group))
	for i, j := range group {
		first := l.first[j]
		if _, ok := at[first]; !ok {
			at[first] = len(m.Kinds)
			m.Kinds = append(m.Kinds, Kind{Ways: m.ways(&m.Problem.Jobs[j], l.pieces[j], stationOf), Group: m.Groups})
		}
		kinds[i] = at[first]
	}
	m.Groups++
	return kinds
}

// tie tells the kinds of a new group what they wait for.
func (m *Model) tie(l *likeness, group, kindOf []int) {
	for _, j := range group {
		k := &m.Kinds[kindOf[j]]
		k.Tied = len(group) > 1
		m.Tied = m.Tied || k.Tied
		if l.first[j] != j {
			continue
		}
		for _, before := range m.Problem.Jobs[j].After {
			if b := kindOf[before]; !slices.Contains(k.After, b) {
				k.After = append(k.After, b)
			}
		}
	}
}

// likeness finds jobs that are alike.
type likeness struct {
	jobs   []Job
	ways   []int // of each job, a number for its ways: the same for the same ways
	first  []int // of each job, the first job like it
	pieces []int // of each job, how many pieces it is: what all its runs count over
}

func newLikeness(jobs []Job) *likeness {
	l := &likeness{jobs: jobs, ways: make([]int, len(jobs)), first: make([]int, len(jobs)), pieces: make([]int, len(jobs))}
	seen := map[string]int{}
	var b []byte
	for j := range jobs {
		l.pieces[j] = pieces(&jobs[j])
		b = spell(b[:0], &jobs[j], l.pieces[j])
		if _, ok := seen[string(b)]; !ok {
			seen[string(b)] = len(seen)
		}
		l.ways[j] = seen[string(b)]
		l.first[j] = j
	}
	l.join()
	return l
}

// pieces is the greatest number that divides all that the runs of a job count.
func pieces(job *Job) int {
	n := joinery.Time(0)
	for _, w := range job.Ways {
		for _, r := range w.Runs {
			n = gcd(n, joinery.Time(r.Over))
		}
	}
	return max(int(n), 1)
}

// spell spells out the ways of a job of some pieces.
func spell(b []byte, job *Job, pieces int) []byte {
	number := func(n int) { b = binary.AppendVarint(b, int64(n)) }
	for _, w := range job.Ways {
		number(len(w.Runs))
		if w.Turned {
			number(-1)
		}
		number(len(w.Fits))
		for _, f := range w.Fits {
			number(f)
		}
		for _, r := range w.Runs {
			number(r.Bit)
			number(int(r.Fence))
			number(r.Blocks)
			if r.Raised {
				number(-1)
			}
			number(int(r.Demand.Depth))
			number(int(r.Demand.Cap))
			number(int(r.Demand.From))
			number(r.Over / pieces)
		}
	}
	return b
}

// join finds jobs of the same ways that wait for the same jobs and are waited
// for by the same jobs, until no more are found: jobs found alike count as the
// same.
func (l *likeness) join() {
	then := make([][]int, len(l.jobs))
	var tied []int
	for j := range l.jobs {
		for _, before := range l.jobs[j].After {
			then[before] = append(then[before], j)
		}
	}
	for j := range l.jobs {
		if len(l.jobs[j].After)+len(then[j]) > 0 {
			tied = append(tied, j)
		}
	}
	for again := true; again; {
		again = false
		seen := map[string]int{}
		for _, j := range tied {
			b := binary.AppendVarint(nil, int64(l.ways[j]))
			b = l.appendFirsts(b, l.jobs[j].After)
			b = l.appendFirsts(b, then[j])
			first, ok := seen[string(b)]
			if !ok {
				seen[string(b)] = l.first[j]
			} else if l.first[j] != first {
				l.first[j] = first
				again = true
			}
		}
	}
}

// appendFirsts spells out which jobs a list names.
func (l *likeness) appendFirsts(b []byte, jobs []int) []byte {
	var firsts []int
	for _, j := range jobs {
		firsts = append(firsts, l.first[j])
	}
	slices.Sort(firsts)
	firsts = slices.Compact(firsts)
	b = binary.AppendVarint(b, int64(len(firsts)))
	for _, f := range firsts {
		b = binary.AppendVarint(b, int64(f))
	}
	return b
}

// group spells out everything about a group of jobs that matters.
func (l *likeness) group(group []int) string {
	var b []byte
	place := make(map[int]int, len(group))
	for i, j := range group {
		place[j] = i
	}
	share := joinery.Time(0)
	for _, j := range group {
		share = gcd(share, joinery.Time(l.pieces[j]))
	}
	for _, j := range group {
		b = binary.AppendVarint(b, int64(l.ways[j]))
		b = binary.AppendVarint(b, int64(l.pieces[j])/int64(share))
		b = binary.AppendVarint(b, int64(len(l.jobs[j].After)))
		for _, before := range l.jobs[j].After {
			b = binary.AppendVarint(b, int64(place[before]))
		}
	}
	return string(b)
}
