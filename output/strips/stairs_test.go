package strips

import (
	"cmp"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
)

// randomTags are tags with marks anywhere between two places, in bunches.
func randomTags(random *rand.Rand, n int, from, to paper.Paper) []*tag {
	spread := (to - from) * paper.Paper(random.Float64())
	tags := make([]*tag, n)
	for i := range tags {
		tags[i] = &tag{
			at:    from + spread*paper.Paper(random.Float64()),
			label: paper.Block{W: 10 + 40*paper.Paper(random.Float64()), H: 4 + 8*paper.Paper(random.Float64())},
		}
	}
	slices.SortFunc(tags, func(a, b *tag) int { return cmp.Compare(a.at, b.at) })
	return tags
}

// However marks lie, labels that found room keep inside it, never overlap, no
// leader runs through a label, and leaders stand in the order of their marks.
func TestLabelsKeepClear(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	found := 0
	for range 3000 {
		from, to, most := paper.Paper(-50), paper.Paper(60+random.Float64()*200), paper.Paper(20+random.Float64()*40)
		tags := randomTags(random, 1+random.IntN(25), from, to)
		left := random.IntN(2) == 0
		if left {
			slices.Reverse(tags)
		}
		for i, g := range tags {
			g.left, g.level = left, i < 3 // the bit's own come first
		}
		ok := false
		if left {
			ok = arrangeLeft(tags, from, to, most)
		} else {
			ok = arrange(tags, from, to, most)
		}
		if !ok {
			continue
		}
		found++
		for i, g := range tags {
			b := g.box()
			require.True(t, paper.Box{X: from, Y: -most, W: to - from, H: most}.Holds(b))
			if i > 0 && left {
				require.LessOrEqual(t, g.foot, tags[i-1].foot-tags[i-1].step()+paper.Touching)
			} else if i > 0 {
				require.GreaterOrEqual(t, g.foot, tags[i-1].foot+tags[i-1].step()-paper.Touching)
			}
			for k, other := range tags {
				if k == i {
					continue
				}
				require.False(t, b.Overlaps(other.box()), "labels %d and %d", i, k)
				leader := paper.Box{X: other.foot - 0.25, Y: -other.rise - other.label.H, W: 0.5, H: other.rise + other.label.H}
				require.False(t, !other.level && b.Overlaps(leader), "label %d and leader %d", i, k)
			}
		}
	}
	assert.Greater(t, found, 1000, "too few found room to test anything")
}

// A lone label stands straight beside its mark.
func TestLoneLabelIsNotMoved(t *testing.T) {
	g := &tag{at: 12, label: paper.Block{W: 20, H: 5}}
	require.True(t, arrange([]*tag{g}, 0, 100, 50))
	assert.Equal(t, paper.Paper(12), g.foot)
	require.True(t, arrangeLeft([]*tag{g}, -100, 12, 50))
	assert.Equal(t, paper.Paper(12), g.foot)
}

// Two labels that just fit on one line do not where one is pushed in from the
// end: then they stand in a staircase.
func TestLabelsPushedTogether(t *testing.T) {
	a, b := &tag{at: 0, label: paper.Block{W: 40, H: 5}}, &tag{at: 50, label: paper.Block{W: 40, H: 5}}
	require.True(t, arrange([]*tag{a, b}, 0, 80, 50))
	assert.Equal(t, paper.Paper(39), b.foot)
	assert.Equal(t, paper.Paper(0), b.rise)
	assert.Equal(t, paper.Paper(0), a.foot)
	assert.Equal(t, paper.Paper(5), a.rise)
	require.False(t, arrange([]*tag{a, b}, 0, 80, 9), "no room for two rows")
}
