package ladder_test

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/measure"
	"fencecard/setup/ladder"
)

func in(t testing.TB, text string) measure.Length {
	t.Helper()
	l, err := measure.ParseLength(text, measure.Inches)
	require.NoError(t, err)
	return l
}

func inches(t testing.TB, texts ...string) []measure.Length {
	var ls []measure.Length
	for _, text := range texts {
		ls = append(ls, in(t, text))
	}
	return ls
}

func TestLadder(t *testing.T) {
	demand := func(depth, most string) ladder.Demand { return ladder.Demand{Depth: in(t, depth), Cap: in(t, most)} }
	rows := []struct {
		name    string
		demands []ladder.Demand
		want    []measure.Length
	}{
		{"even, not deepest first", []ladder.Demand{demand("1", "5/16")}, inches(t, "1/4", "1/2", "3/4", "1")},
		{"one pass", []ladder.Demand{demand("1/4", "1/4")}, inches(t, "1/4")},
		{"two depths share", []ladder.Demand{demand("1/2", "5/16"), demand("1/4", "5/16")}, inches(t, "1/4", "1/2")},
		{"the hard wood holds while it goes deeper", []ladder.Demand{demand("1/4", "1/8"), demand("1", "3/8")}, inches(t, "1/8", "1/4", "5/8", "1")},
		{"what is left comes last", []ladder.Demand{demand("1 7/16", "5/16")}, inches(t, "5/16", "5/8", "15/16", "1 1/4", "1 7/16")},
		{"from a depth to the coarse marks above it", []ladder.Demand{demand("3/16", "1/4"), demand("1", "1/4")}, inches(t, "3/16", "1/4", "1/2", "3/4", "1")},
		{"a first step longer than the rest", []ladder.Demand{demand("3/16", "5/16"), demand("3/4", "5/16")}, inches(t, "3/16", "1/2", "3/4")},
		{"from the floor of a recess", []ladder.Demand{{Depth: in(t, "3/4"), From: in(t, "3/8"), Cap: in(t, "1/8")}}, inches(t, "1/2", "5/8", "3/4")},
		{"a recess and a whole one share", []ladder.Demand{{Depth: in(t, "1"), From: in(t, "1/2"), Cap: in(t, "1/4")}, demand("1/4", "1/4")}, inches(t, "1/4", "3/4", "1")},
		{"a recess over hard wood does not hold the soft wood below it", []ladder.Demand{{Depth: in(t, "3/4"), From: in(t, "3/8"), Cap: in(t, "1/8")}, demand("3/8", "3/8")}, inches(t, "3/8", "1/2", "5/8", "3/4")},
		{"a recess on the way", []ladder.Demand{{Depth: in(t, "1"), From: in(t, "1/4"), Cap: in(t, "1/8")}, demand("1/2", "3/8")}, inches(t, "3/8", "1/2", "5/8", "3/4", "7/8", "1")},
		{"a depth off the scale", []ladder.Demand{demand("0.3", "5/32")}, inches(t, "5/32", "0.3")},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			assert.Equal(t, r.want, ladder.Of(r.demands, measure.InchScale))
		})
	}
}

// Every rung lies on the scale or is a depth, no step is deeper than the caps
// allow, every run reaches its depth by rungs of the ladder.
func TestLadderHolds(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	scale := measure.InchScale
	for range 4000 {
		demands := randomDemands(random, scale)
		rungs := ladder.Of(demands, scale)
		for _, d := range demands {
			used := ladder.Used(rungs, d)
			require.NotEmpty(t, used)
			require.Equal(t, d.Depth, used[len(used)-1])
			at := d.From
			for _, r := range used {
				require.Contains(t, rungs, r)
				require.Greater(t, r, at)
				require.LessOrEqual(t, r-at, d.Cap, "%v %v", demands, rungs)
				at = r
			}
		}
	}
}

// reaches goes through all rungs of one division to see whether as many steps
// come from one height to another.
func reaches(from, to, most, division measure.Length, steps int) bool {
	if to-from <= most {
		return true
	}
	for h := (from/division + 1) * division; steps > 1 && h-from <= most; h += division {
		if reaches(h, to, most, division, steps-1) {
			return true
		}
	}
	return false
}

// The rungs between two depths lie on the coarsest division that needs no more
// of them.
func TestRungsAreEasyToSet(t *testing.T) {
	random := rand.New(rand.NewPCG(7, 8))
	for _, scale := range []measure.Scale{measure.InchScale, measure.DefaultScale(measure.Millimetres)} {
		divisions := []measure.Length{measure.Inch / 2, measure.Inch / 4, measure.Inch / 8, measure.Inch / 16, measure.Inch / 32, measure.Inch / 64}
		if scale.Unit == measure.Millimetres {
			mm := measure.Millimetre
			divisions = []measure.Length{10 * mm, 5 * mm, 2 * mm, mm, mm / 2, mm / 5, mm / 10}
		}
		for range 300 {
			shallow := measure.Length(1+random.IntN(30)) * divisions[len(divisions)-1]
			deep := shallow + measure.Length(1+random.IntN(120))*divisions[len(divisions)-1]
			most := measure.Length(8+random.IntN(60)) * divisions[len(divisions)-1]
			rungs := ladder.Of([]ladder.Demand{{Depth: shallow, Cap: most}, {Depth: deep, Cap: most}}, scale)
			between := rungs[slices.Index(rungs, shallow)+1 : len(rungs)-1]
			for _, d := range divisions {
				if !slices.ContainsFunc(between, func(h measure.Length) bool { return h%d != 0 }) {
					break
				}
				require.False(t, reaches(shallow, deep, most, d, len(between)+1), "%v to %v, most %v: %v", shallow, deep, most, rungs)
			}
		}
	}
}

// Gentle passes take every rung up to the depth; others at least as many as the
// cap asks for.
func TestPasses(t *testing.T) {
	rungs := inches(t, "1/8", "1/4", "1/2", "3/4")
	gentle := ladder.Demand{Depth: in(t, "1/2"), Cap: in(t, "1/4"), Every: true}
	assert.Equal(t, rungs[:3], ladder.Used(rungs, gentle))
	few := ladder.Demand{Depth: in(t, "1/2"), Cap: in(t, "1/4")}
	assert.Equal(t, rungs[1:3], ladder.Used(rungs, few))
	assert.Equal(t, 2, few.Passes())
	random := rand.New(rand.NewPCG(9, 10))
	for range 1000 {
		demands := randomDemands(random, measure.InchScale)
		rungs := ladder.Of(demands, measure.InchScale)
		for _, d := range demands {
			require.GreaterOrEqual(t, len(ladder.Used(rungs, d)), d.Passes())
			require.Len(t, ladder.Used(ladder.Of([]ladder.Demand{d}, measure.InchScale), d), d.Passes())
		}
	}
}

// fewest finds the least number of heights by going through all heights on the
// scale and all depths in turn, and for each through all heights that may come
// before it: no cut that goes that deep may take more than its cap, or be
// passed over at its depth.
func fewest(demands []ladder.Demand, scale measure.Scale) int {
	var heights []measure.Length
	deepest := measure.Length(0)
	for _, d := range demands {
		heights = append(heights, d.Depth)
		deepest = max(deepest, d.Depth)
	}
	for h := scale.Division; h < deepest; h += scale.Division {
		heights = append(heights, h)
	}
	slices.Sort(heights)
	heights = slices.Compact(heights)
	may := func(from, to measure.Length) bool {
		for _, d := range demands {
			if d.Depth >= to && to-max(from, d.From) > d.Cap || d.Depth > from && d.Depth < to {
				return false
			}
		}
		return true
	}
	best := map[measure.Length]int{0: 0}
	for i, h := range heights {
		for _, from := range append([]measure.Length{0}, heights[:i]...) {
			if n, ok := best[from]; ok && may(from, h) && (best[h] == 0 || n+1 < best[h]) {
				best[h] = n + 1
			}
		}
	}
	return best[deepest]
}

func randomDemands(random *rand.Rand, scale measure.Scale) []ladder.Demand {
	off := measure.Length(1 + random.IntN(2)) // 2: half the depths lie off the scale
	demands := make([]ladder.Demand, 1+random.IntN(5))
	recessed := random.IntN(2) == 0
	for i := range demands {
		demands[i] = ladder.Demand{
			Depth: measure.Length(1+random.IntN(60)) * scale.Division / off,
			Cap:   measure.Length(1+random.IntN(20)) * scale.Division,
		}
		if recessed {
			demands[i].From = scale.Floor(measure.Length(random.IntN(int(demands[i].Depth))))
		}
	}
	return demands
}

func TestNoLadderHasFewer(t *testing.T) {
	random := rand.New(rand.NewPCG(3, 4))
	for range 2000 {
		demands := randomDemands(random, measure.InchScale)
		rungs := ladder.Of(demands, measure.InchScale)
		require.Len(t, rungs, fewest(demands, measure.InchScale), "%v", demands)
		sorted := slices.SortedFunc(slices.Values(demands), func(a, b ladder.Demand) int { return cmp.Compare(a.Depth, b.Depth) })
		require.Equal(t, len(rungs), ladder.Count(sorted, measure.InchScale))
	}
}

// Every height is of use to some cut; two ladders together serve the cuts of
// both; and more cuts never need fewer heights, as long as no depth lies off
// the scale.
func TestLaddersJoin(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	scale := measure.InchScale
	for range 2000 {
		a, b := randomDemands(random, scale), randomDemands(random, scale)
		both := slices.Concat(a, b)
		joined := ladder.Of(both, scale)
		require.LessOrEqual(t, len(joined), len(ladder.Of(a, scale))+len(ladder.Of(b, scale)))
		if !slices.ContainsFunc(both, func(d ladder.Demand) bool { return !scale.On(d.Depth) }) {
			require.GreaterOrEqual(t, len(joined), len(ladder.Of(a, scale)))
		}
		used := map[measure.Length]bool{}
		for _, d := range both {
			for _, h := range ladder.Used(joined, d) {
				used[h] = true
			}
		}
		require.Len(t, used, len(joined), "%v", both)
	}
}

func ExampleOf() {
	scale := measure.InchScale
	half, deep, most := measure.Inch/2, measure.Inch, 5*measure.Inch/16
	for _, h := range ladder.Of([]ladder.Demand{{Depth: half, Cap: most}, {Depth: deep, Cap: most}}, scale) {
		fmt.Println(scale.Format(h))
	}
	// Output:
	// 1/4
	// 1/2
	// 3/4
	// 1
}

// Moves reach over a distance in as many as are asked for, none longer than it may
// be, on the coarsest division that can.
func TestMoves(t *testing.T) {
	for _, r := range []struct {
		far, most, want string
		moves           measure.Length
	}{
		{"1", "31/64", "3/8", 3},
		{"2 1/4", "31/64", "15/32", 5},
		{"1 1/4", "47/64", "5/8", 2},
		{"3/4", "47/64", "1/2", 2},
		{"31/32", "31/64", "31/64", 2},
	} {
		got := ladder.Moves(in(t, r.far), r.moves, in(t, r.most), measure.InchScale)
		assert.Equal(t, in(t, r.want), got, "%+v", r)
	}
	random := rand.New(rand.NewPCG(11, 12))
	for _, scale := range []measure.Scale{measure.InchScale, measure.DefaultScale(measure.Millimetres)} {
		for range 2000 {
			most := measure.Length(1+random.IntN(60)) * scale.Division
			far := measure.Length(1 + random.IntN(200)*int(scale.Division)/2)
			moves := (far + most - 1) / most
			move := ladder.Moves(far, moves, most, scale)
			require.LessOrEqual(t, move, most)
			require.GreaterOrEqual(t, move*moves, far)
			require.Less(t, move*(moves-1), far)
		}
	}
}
