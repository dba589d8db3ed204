package wording

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/setup/deck"
)

// TestRanges writes lists of run numbers.
func TestRanges(t *testing.T) {
	for want, numbers := range map[string][]int{
		"3.1":                        {1},
		"3.1, 3.2":                   {1, 2},
		"3.1–3.3":                    {1, 2, 3},
		"3.1–3.4, 3.7, 3.9–3.11":     {1, 2, 3, 4, 7, 9, 10, 11},
		"3.2, 3.3, 3.5, 3.98, 3.100": {2, 3, 5, 98, 100},
	} {
		var runs []*deck.Run
		for _, n := range numbers {
			runs = append(runs, &deck.Run{Setup: 3, Index: n})
		}
		assert.Equal(t, want, Ranges(runs))
	}
}

// However many setups and runs, and in whatever order they come: who reads the list
// finds just the runs that are meant.
func TestAmongIsReadBack(t *testing.T) {
	random := rand.New(rand.NewPCG(4, 1))
	for range 2000 {
		var all, some []*deck.Run
		for setup := range 1 + random.IntN(4) {
			for index := range 1 + random.IntN(9) {
				r := &deck.Run{Setup: setup + 3, Index: index + 1}
				all = append(all, r)
				if random.IntN(3) > 0 {
					some = append(some, r)
				}
			}
		}
		random.Shuffle(len(some), func(i, j int) { some[i], some[j] = some[j], some[i] })
		want := map[string]bool{}
		for _, r := range some {
			want[r.Number()] = true
		}
		text := among(some, all)
		read := map[string]bool{}
		list, but := strings.CutPrefix(text, "all but ")
		setup := ""
		for _, part := range strings.Split(list, ", ") {
			from, to, span := strings.Cut(part, "–")
			if before, index, ok := strings.Cut(from, "."); ok {
				setup, from = before, index
			}
			if _, index, ok := strings.Cut(to, "."); ok {
				to = index
			}
			if !span {
				to = from
			}
			first, _ := strconv.Atoi(from)
			last, _ := strconv.Atoi(to)
			for n := first; n <= last && n > 0; n++ {
				read[setup+"."+strconv.Itoa(n)] = true
			}
		}
		if but {
			for _, r := range all {
				if n := r.Number(); read[n] {
					delete(read, n)
				} else {
					read[n] = true
				}
			}
		}
		assert.Equal(t, want, read, text)
	}
}
