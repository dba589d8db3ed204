package setup_test

import (
	"fmt"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// minutes are what one plan takes, run in three ways.
type minutes struct {
	cuts, setups, passes          int
	byPiece, plain, searched, low joinery.Time
}

func minutesOf(t testing.TB, plan *joinery.Plan) minutes {
	t.Helper()
	var m minutes
	for _, p := range plan.Pieces {
		m.cuts += len(p.Cuts)
	}
	m.byPiece = byPiece(t, plan)
	plain, err := setup.MakeWith(t.Context(), plan, setup.Options{Plain: true})
	require.NoError(t, err)
	d, err := setup.MakeWith(t.Context(), plan, bySteps)
	require.NoError(t, err)
	m.setups, m.passes = len(d.Setups), d.Changes.Passes
	m.plain, m.searched, m.low = plain.Changes.Time, d.Changes.Time, d.Changes.Bound
	return m
}

// byPiece is the time it takes to cut piece by piece, each cut in the plan's
// order with the bit that suits it best. Runs in a row at one bit and fence
// distance are made together.
func byPiece(t testing.TB, plan *joinery.Plan) joinery.Time {
	t.Helper()
	jobs, err := setup.Jobs(plan)
	require.NoError(t, err)
	var visits []setup.Visit
	for j := range jobs {
		for r, run := range jobs[j].Ways[0].Steps {
			n := len(visits)
			waits := n > 0 && slices.ContainsFunc(visits[max(0, n-1)].Steps, func(o setup.JobStep) bool {
				return o.Job == j && !run.Turned || slices.Contains(jobs[j].After, o.Job)
			})
			if n == 0 || visits[n-1].Key != run.Key() || waits {
				visits = append(visits, setup.Visit{Key: run.Key()})
			}
			last := &visits[len(visits)-1]
			last.Steps = append(last.Steps, setup.JobStep{Job: j, Step: r})
		}
	}
	return deck.Count(setup.Deal(plan, jobs, make(setup.Choice, len(jobs)), visits), &plan.Shop).Time
}

// The minutes of all plans are a golden file, anew where FENCECARD_GOLDEN is
// "update", and their sums stand in the README.
func TestMinutesOfAllPlans(t *testing.T) {
	t.Parallel()
	const golden = "testdata/minutes.tsv"
	var table strings.Builder
	table.WriteString("# Minutes by three ways of working; see byPiece and minutesOf.\n" +
		"# plan\tcuts\tsetups\tpasses\tby piece\tplain\tsearched\n")
	var sum minutes
	row := func(name string, m minutes) {
		fmt.Fprintf(&table, "%s\t%d\t%d\t%d\t%g\t%g\t%g\n", name, m.cuts, m.setups, m.passes,
			m.byPiece.Minutes(), m.plain.Minutes(), m.searched.Minutes())
	}
	plans := workpiece.RealPlans(t)
	for _, name := range slices.Sorted(maps.Keys(plans)) {
		m := minutesOf(t, plans[name])
		require.Equal(t, m.low, m.searched, name)
		row(name, m)
		sum.cuts += m.cuts
		sum.setups += m.setups
		sum.passes += m.passes
		sum.byPiece += m.byPiece
		sum.plain += m.plain
		sum.searched += m.searched
	}
	row("all", sum)
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		require.NoError(t, os.WriteFile(golden, []byte(table.String()), 0o644))
	}
	want, err := os.ReadFile(golden)
	require.NoError(t, err)
	assert.Equal(t, string(want), table.String())
	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	thousands := func(t joinery.Time) string {
		minutes := int(t.Minutes())
		return fmt.Sprintf("%d,%03d", minutes/1000, minutes%1000)
	}
	assert.Contains(t, strings.Join(strings.Fields(string(readme)), " "),
		fmt.Sprintf("The %d example plans take %s minutes piece by piece, %s with the same bits in a plain order, and %s as they are printed.",
			len(plans), thousands(sum.byPiece), thousands(sum.plain), thousands(sum.searched)))
}

// BenchmarkMinutes reports, besides the speed, the minutes saved.
func BenchmarkMinutes(b *testing.B) {
	plans := workpiece.RealPlans(b)
	for _, name := range slices.Sorted(maps.Keys(plans)) {
		b.Run(name, func(b *testing.B) {
			m := minutesOf(b, plans[name])
			for b.Loop() {
				if _, err := setup.MakeWith(b.Context(), plans[name], bySteps); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(m.byPiece.Minutes(), "min-by-piece")
			b.ReportMetric(m.plain.Minutes(), "min-plain")
			b.ReportMetric(m.searched.Minutes(), "min-searched")
		})
	}
}
