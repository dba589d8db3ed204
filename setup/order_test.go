package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
)

func TestOrder(t *testing.T) {
	quarter := joinery.Bit{Name: "quarter", Diameter: in(t, "1/4"), Plunges: joinery.Yes}
	half := joinery.Bit{Name: "half", Diameter: in(t, "1/2"), Plunges: joinery.Yes}
	bits := []joinery.Bit{half, quarter}
	rows := []struct {
		name string
		cuts []joinery.Cut
		want []string
	}{
		{"bits together, fences ascending",
			[]joinery.Cut{groove(t, "a", "1/2", "3"), groove(t, "b", "1/4", "2"), groove(t, "c", "1/2", "1"), groove(t, "d", "1/4", "1")},
			[]string{"quarter@1: d", "quarter@2: b", "half@1: c", "half@3: a"}},
		{"one setup for the same bit and fence",
			[]joinery.Cut{groove(t, "a", "1/2", "3"), groove(t, "b", "1/2", "3")},
			[]string{"half@3: a b"}},
		{"a wide cut goes away from the fence",
			[]joinery.Cut{groove(t, "a", "3/4", "2")},
			[]string{"half@2: a", "half@2 1/4: a"}},
		{"after is kept against bits and fences",
			[]joinery.Cut{groove(t, "a", "1/4", "1", "b"), groove(t, "b", "1/2", "3")},
			[]string{"half@3: b", "quarter@1: a"}},
		{"after makes a setup twice where nothing else helps",
			[]joinery.Cut{groove(t, "a", "1/4", "1"), groove(t, "b", "1/2", "3", "a"), groove(t, "c", "1/4", "1", "b")},
			[]string{"quarter@1: a", "half@3: b", "quarter@1: c"}},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			assert.Equal(t, r.want, route(deckOf(t, boardWith(t, bits, r.cuts...))))
		})
	}
}

func TestOrderOfACircle(t *testing.T) {
	bits := []joinery.Bit{bitOf(in(t, "1/4"))}
	_, err := setup.Make(boardWith(t, bits, groove(t, "a", "1/4", "1", "b"), groove(t, "b", "1/4", "2", "a")))
	assert.ErrorContains(t, err, "circle")
}

func TestChoiceOfBit(t *testing.T) {
	bit := func(name, diameter string, plunges joinery.Answer) joinery.Bit {
		return joinery.Bit{Name: name, Diameter: in(t, diameter), Cutting: in(t, "1"), Plunges: plunges}
	}
	measured := bit("label 1/2", "1/2", joinery.Yes)
	measured.Measured = in(t, "0.496")
	short := bit("short", "1/2", joinery.Yes)
	short.Cutting = in(t, "1/8")
	stopped := groove(t, "stopped", "1/2", "2")
	stopped.Span = joinery.Span{From: in(t, "1"), To: in(t, "9"), Side: joinery.Left}
	rows := []struct {
		name string
		bits []joinery.Bit
		cut  joinery.Cut
		want []string
	}{
		{"exact before wider in fewer", []joinery.Bit{bit("3/8", "3/8", joinery.Yes), bit("1/2", "1/2", joinery.Yes)},
			groove(t, "g", "1/2", "2"), []string{"1/2@2: g"}},
		{"fewest positions, then widest", []joinery.Bit{bit("1/4", "1/4", joinery.Yes), bit("5/16", "5/16", joinery.Yes), bit("3/8", "3/8", joinery.Yes)},
			groove(t, "g", "1/2", "2"), []string{"3/8@2: g", "3/8@2 1/8: g"}},
		{"measured counts, the label does not", []joinery.Bit{measured},
			groove(t, "g", "1/2", "2"), []string{"label 1/2@2: g", "label 1/2@2+: g"}},
		{"too short is passed over", []joinery.Bit{short, bit("1/4", "1/4", joinery.Yes)},
			groove(t, "g", "1/2", "2"), []string{"1/4@2: g", "1/4@2 1/8: g", "1/4@2 1/4: g"}},
		{"no dropping on a bit that does not plunge", []joinery.Bit{bit("flat", "1/2", joinery.No), bit("3/8", "3/8", joinery.Yes)},
			stopped, []string{"3/8@2: stopped", "3/8@2 1/8: stopped"}},
		{"a metric bit at an inch fence only where it must be", []joinery.Bit{bit("20 mm", "20 mm", joinery.Yes), bit("1/2", "1/2", joinery.Yes)},
			groove(t, "g", "1 1/2", "2"), []string{"1/2@2: g", "1/2@2 21/64: g", "1/2@2 43/64: g", "1/2@3: g"}},
		{"a metric bit of the exact width", []joinery.Bit{bit("18 mm", "18 mm", joinery.Yes), bit("1/2", "1/2", joinery.Yes)},
			groove(t, "g", "18 mm", "2"), []string{"18 mm@2: g"}},
		{"fed in, it need not plunge", []joinery.Bit{bit("flat", "1/2", joinery.No), bit("3/8", "3/8", joinery.Yes)},
			groove(t, "g", "1/2", "2"), []string{"flat@2: g"}},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			assert.Equal(t, r.want, route(deckOf(t, boardWith(t, r.bits, r.cut))))
		})
	}
}

func TestFenceEither(t *testing.T) {
	bits := []joinery.Bit{bitOf(in(t, "1/2"))}
	wide := groove(t, "centred", "3/4", "3 5/8")
	wide.Fence.Either = true
	jobs, err := setup.Jobs(boardWith(t, bits, wide))
	require.NoError(t, err)
	var turned *setup.Way
	for i, w := range jobs[0].Ways {
		if w.Runs[0].Turned {
			turned = &jobs[0].Ways[i]
		}
	}
	require.NotNil(t, turned, "a centred channel may be cut by turning the piece")
	// (W + w)/2 - D: each run cuts the half far from the fence.
	assert.Equal(t, in(t, "3 7/8"), turned.Runs[0].NearEdge)
	assert.Equal(t, turned.Runs[0].NearEdge, turned.Runs[1].NearEdge)
	assert.Equal(t, turned.Runs[0].Fence.Opposite(), turned.Runs[1].Fence)

	offCentre := groove(t, "off centre", "3/4", "3")
	offCentre.Fence.Either = true
	jobs, err = setup.Jobs(boardWith(t, bits, offCentre))
	require.NoError(t, err)
	for _, w := range jobs[0].Ways {
		assert.False(t, w.Runs[0].Turned)
	}
}

// A rabbet is cut with the bit buried in the fence, never with the wood
// between bit and fence.
func TestBuriedBit(t *testing.T) {
	rabbet := joinery.Cut{Kind: &joinery.Rabbet, Name: "rabbet", In: joinery.Back, Along: joinery.Bottom,
		Width: in(t, "3/8"), Depth: in(t, "1/4"), Fence: joinery.Fencing{Either: true}}
	d := deckOf(t, boardWith(t, []joinery.Bit{bitOf(in(t, "1/2"))}, rabbet))
	require.Len(t, d.Setups, 1)
	assert.Equal(t, setup.Fence{NearEdge: in(t, "-1/8"), Centre: in(t, "1/8"), FarEdge: in(t, "3/8")}, d.Setups[0].Fence)
	assert.Equal(t, joinery.Bottom, d.Setups[0].Cards[0].Run.Fence)
}

func TestBitsInTheShopThatCannot(t *testing.T) {
	wide := groove(t, "g", "1/2", "2")
	short := joinery.Bit{Name: "short", Diameter: in(t, "1/2"), Cutting: in(t, "1/8")}
	_, err := setup.Make(boardWith(t, []joinery.Bit{bitOf(in(t, "1")), short}, wide))
	assert.ErrorContains(t, err, "the short bit cuts only 1/8 in")
	_, err = setup.Make(boardWith(t, []joinery.Bit{bitOf(in(t, "1"))}, wide))
	assert.ErrorContains(t, err, "no bit is narrow enough for a channel 1/2 in wide")
}
