package views

import (
	"cmp"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/output/wording"
	"fencecard/setup"
	"fencecard/setup/deck"
)

// saidAt is where a mark stands by the words and the number that are printed for it,
// mm from the bit's centre, the right positive.
func saidAt(r *deck.Run, m *deck.Mark, marking wording.Marking) float64 {
	at := marking.Length(m).Millimetres()
	if strings.Contains(marking.Set, "LEFT") {
		at = -at
	}
	half := r.Along().Millimetres() / 2
	if strings.Contains(marking.From, "TRAILING") || strings.Contains(marking.From, "LEFT") {
		half = -half
	}
	return at + half
}

// saidOf are the marks of a pair as they are printed.
func saidOf(s setting.Setter, p *deck.Pair, r *deck.Run) []spot {
	var all []spot
	for i, m := range []*deck.PairMark{p.Start, p.Stop} {
		if m == nil {
			continue
		}
		marking := wording.MarkingOf(r, i == 1, m.Guide, s.Blocks)
		kind := []string{"start", "stop"}[i]
		if strings.Contains(marking.Set, "BACK STOP") {
			kind = "block"
		}
		if strings.Contains(marking.Set, "FRONT STOP") {
			kind = "front block"
		}
		if marking.Set != "PENCIL LINE" {
			all = append(all, spot{at: saidAt(r, &m.Mark, marking), kind: kind})
		}
		if behind, asked := marking.Behind(); asked {
			all = append(all, spot{at: saidAt(r, &m.Mark, behind), kind: "block"})
		}
	}
	slices.SortStableFunc(all, func(a, b spot) int { return cmp.Compare(a.at, b.at) })
	return all
}

// What is drawn on a fence stands on the side that its words say and in the order of
// its numbers, and to one scale in all the pairs of a setup, but for what would run
// into the bit or one another.
func TestStripStandsByItsNumbers(t *testing.T) {
	files, err := filepath.Glob("../../testdata/plans/*.yaml")
	require.NoError(t, err)
	plans := [][]byte{examples.BootBench}
	for _, file := range files {
		plan, err := os.ReadFile(file)
		require.NoError(t, err)
		plans = append(plans, plan)
	}
	lone, exact := 0, 0
	for _, plan := range plans {
		p, err := planfile.Read("plan.yaml", plan, nil)
		require.NoError(t, err)
		d, err := setup.Make(p)
		require.NoError(t, err)
		s := setting.Setter{Reach: p.Shop.Fence, Blocks: p.Shop.Stops == joinery.Blocks}
		for i := range d.Setups {
			u := &d.Setups[i]
			scale := 0.0 // what the setup's strips are drawn to, of the widest
			for k := range u.Runs {
				r := &u.Runs[k]
				pair := u.Pair(r.Pair)
				if pair == nil {
					continue
				}
				said := saidOf(s, pair, r)
				for _, w := range []paper.Paper{48, 60, 95, 160} {
					drawn := laidOut(s, u, pair, r, w).spots
					require.Len(t, drawn, len(said), "%s, run %s", p.Title, r.Number())
					for n, m := range said {
						about := p.Title + ", run " + r.Number() + ", " + m.kind
						got := drawn[n]
						assert.Equal(t, m.kind, got.kind, about)
						assert.Equal(t, m.at > 0, got.x > w/2, "%s: its side", about)
						if n > 0 {
							assert.Greater(t, got.x, drawn[n-1].x, "%s: its order", about)
						}
						out := max(m.at, -m.at)
						from := max(got.x-w/2, w/2-got.x)
						if w != 160 || got.offEnd(s) != 0 {
							continue
						}
						if out < 50 && (n == 0 || m.at < 0 || said[n-1].at < 0) && (n == len(said)-1 || m.at > 0 || said[n+1].at > 0) {
							lone++
							assert.Less(t, from, w/8, "%s at %.0f mm stands beside the bit", about, m.at)
						}
						if from > stripBit+2*stripApart && !(n > 0 && got.x-drawn[n-1].x <= stripApart+0.01) && !(n+1 < len(drawn) && drawn[n+1].x-got.x <= stripApart+0.01) {
							if scale == 0 {
								scale = float64(from) / out
							}
							exact++
							assert.InDelta(t, scale, float64(from)/out, 1e-6, about)
						}
					}
				}
			}
		}
	}
	assert.Greater(t, lone, 10)
	assert.Greater(t, exact, 20)
}
