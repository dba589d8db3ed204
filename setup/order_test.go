package setup_test

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

func TestOrder(t *testing.T) {
	quarter := joinery.Bit{Name: "quarter", Diameter: workpiece.In(t, "1/4"), Plunges: joinery.Yes}
	half := joinery.Bit{Name: "half", Diameter: workpiece.In(t, "1/2"), Plunges: joinery.Yes}
	bits := []joinery.Bit{half, quarter}
	rows := []struct {
		name string
		cuts []joinery.Cut
		want []string
	}{
		{"bits together, fences ascending",
			[]joinery.Cut{workpiece.Groove(t, "a", "1/2", "3"), workpiece.Groove(t, "b", "1/4", "2"), workpiece.Groove(t, "c", "1/2", "1"), workpiece.Groove(t, "d", "1/4", "1")},
			[]string{"quarter@1: d", "quarter@2: b", "half@1: c", "half@3: a"}},
		{"one setup for the same bit and fence",
			[]joinery.Cut{workpiece.Groove(t, "a", "1/2", "3"), workpiece.Groove(t, "b", "1/2", "3")},
			[]string{"half@3: a b"}},
		{"a wide cut goes away from the fence",
			[]joinery.Cut{workpiece.Groove(t, "a", "3/4", "2")},
			[]string{"half@2: a", "half@2 1/4: a"}},
		{"after is kept against bits and fences",
			[]joinery.Cut{workpiece.Groove(t, "a", "1/4", "1", "b"), workpiece.Groove(t, "b", "1/2", "3")},
			[]string{"half@3: b", "quarter@1: a"}},
		{"after makes a setup twice where nothing else helps",
			[]joinery.Cut{workpiece.Groove(t, "a", "1/4", "1"), workpiece.Groove(t, "b", "1/2", "3", "a"), workpiece.Groove(t, "c", "1/4", "1", "b")},
			[]string{"quarter@1: a", "half@3: b", "quarter@1: c"}},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			assert.Equal(t, r.want, workpiece.Route(workpiece.DeckOf(t, workpiece.BoardWith(t, bits, r.cuts...))))
		})
	}
}

func TestOrderOfACircle(t *testing.T) {
	bits := []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1/4"))}
	_, err := setup.Make(workpiece.BoardWith(t, bits, workpiece.Groove(t, "a", "1/4", "1", "b"), workpiece.Groove(t, "b", "1/4", "2", "a")))
	assert.ErrorContains(t, err, "circle")
}

func TestChoiceOfBit(t *testing.T) {
	bit := func(name, diameter string, plunges joinery.Answer) joinery.Bit {
		return joinery.Bit{Name: name, Diameter: workpiece.In(t, diameter), Cutting: workpiece.In(t, "1"), Plunges: plunges}
	}
	measured := bit("label 1/2", "1/2", joinery.Yes)
	measured.Measured = workpiece.In(t, "0.496")
	short := bit("short", "1/2", joinery.Yes)
	short.Cutting = workpiece.In(t, "1/8")
	stopped := workpiece.Groove(t, "stopped", "1/2", "2")
	stopped.Span = joinery.Span{From: workpiece.In(t, "1"), To: workpiece.In(t, "9"), Side: joinery.Left}
	rows := []struct {
		name string
		bits []joinery.Bit
		cut  joinery.Cut
		want []string
	}{
		{"exact before wider in fewer", []joinery.Bit{bit("3/8", "3/8", joinery.Yes), bit("1/2", "1/2", joinery.Yes)},
			workpiece.Groove(t, "g", "1/2", "2"), []string{"1/2@2: g"}},
		{"fewest positions, then widest", []joinery.Bit{bit("1/4", "1/4", joinery.Yes), bit("5/16", "5/16", joinery.Yes), bit("3/8", "3/8", joinery.Yes)},
			workpiece.Groove(t, "g", "1/2", "2"), []string{"3/8@2: g", "3/8@2 1/8: g"}},
		{"measured counts, the label does not", []joinery.Bit{measured},
			workpiece.Groove(t, "g", "1/2", "2"), []string{"label 1/2@2: g", "label 1/2@2+: g"}},
		{"too short is passed over", []joinery.Bit{short, bit("1/4", "1/4", joinery.Yes)},
			workpiece.Groove(t, "g", "1/2", "2"), []string{"1/4@2: g", "1/4@2 1/8: g", "1/4@2 1/4: g"}},
		{"no dropping on a bit that does not plunge", []joinery.Bit{bit("flat", "1/2", joinery.No), bit("3/8", "3/8", joinery.Yes)},
			stopped, []string{"3/8@2: stopped", "3/8@2 1/8: stopped"}},
		{"a metric bit at an inch fence only where it must be", []joinery.Bit{bit("20 mm", "20 mm", joinery.Yes), bit("1/2", "1/2", joinery.Yes)},
			workpiece.Groove(t, "g", "1 1/2", "2"), []string{"1/2@2: g", "1/2@2 21/64: g", "1/2@2 43/64: g", "1/2@3: g"}},
		{"a metric bit of the exact width", []joinery.Bit{bit("18 mm", "18 mm", joinery.Yes), bit("1/2", "1/2", joinery.Yes)},
			workpiece.Groove(t, "g", "18 mm", "2"), []string{"18 mm@2: g"}},
		{"fed in, it need not plunge", []joinery.Bit{bit("flat", "1/2", joinery.No), bit("3/8", "3/8", joinery.Yes)},
			workpiece.Groove(t, "g", "1/2", "2"), []string{"flat@2: g"}},
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			assert.Equal(t, r.want, workpiece.Route(workpiece.DeckOf(t, workpiece.BoardWith(t, r.bits, r.cut))))
		})
	}
}

func TestFenceEither(t *testing.T) {
	bits := []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1/2"))}
	wide := workpiece.Groove(t, "centred", "3/4", "3 5/8")
	wide.Fence.Either = true
	jobs, err := setup.Jobs(workpiece.BoardWith(t, bits, wide))
	require.NoError(t, err)
	var turned *setup.Way
	for i, w := range jobs[0].Ways {
		if w.Steps[0].Turned {
			turned = &jobs[0].Ways[i]
		}
	}
	require.NotNil(t, turned, "a centred channel may be cut by turning the piece")
	// (W + w)/2 - D: each run cuts the half far from the fence.
	assert.Equal(t, workpiece.In(t, "3 7/8"), turned.Steps[0].NearEdge)
	assert.Equal(t, turned.Steps[0].NearEdge, turned.Steps[1].NearEdge)
	assert.Equal(t, turned.Steps[0].Fence.Opposite(), turned.Steps[1].Fence)

	offCentre := workpiece.Groove(t, "off centre", "3/4", "3")
	offCentre.Fence.Either = true
	jobs, err = setup.Jobs(workpiece.BoardWith(t, bits, offCentre))
	require.NoError(t, err)
	for _, w := range jobs[0].Ways {
		assert.False(t, w.Steps[0].Turned)
	}
}

// A rabbet is cut with the bit buried in the fence, never with the wood
// between bit and fence.
func TestBuriedBit(t *testing.T) {
	rabbet := joinery.Cut{Kind: &joinery.Rabbet, Name: "rabbet", In: joinery.Back, Along: joinery.Bottom,
		Width: workpiece.In(t, "3/8"), Depth: workpiece.In(t, "1/4"), Fence: joinery.Fencing{Either: true}}
	d := workpiece.DeckOf(t, workpiece.BoardWith(t, []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1/2"))}, rabbet))
	require.Len(t, d.Setups, 1)
	assert.Equal(t, deck.Fence{NearEdge: workpiece.In(t, "-1/8"), Centre: workpiece.In(t, "1/8"), FarEdge: workpiece.In(t, "3/8")}, d.Setups[0].Fence)
	assert.Equal(t, joinery.Bottom, d.Setups[0].Runs[0].Step.Fence)
}

func TestBitsInTheShopThatCannot(t *testing.T) {
	wide := workpiece.Groove(t, "g", "1/2", "2")
	short := joinery.Bit{Name: "short", Diameter: workpiece.In(t, "1/2"), Cutting: workpiece.In(t, "1/8")}
	_, err := setup.Make(workpiece.BoardWith(t, []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1")), short}, wide))
	assert.ErrorContains(t, err, "the short bit cuts only 1/8 in")
	_, err = setup.Make(workpiece.BoardWith(t, []joinery.Bit{workpiece.BitOf(workpiece.In(t, "1"))}, wide))
	assert.ErrorContains(t, err, "no bit is narrow enough for a channel 1/2 in wide")
}
