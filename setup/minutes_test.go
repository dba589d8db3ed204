package setup_test

import (
	"fmt"
	"maps"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery"
	"fencecard/setup"
	"fencecard/setup/deck"
	"fencecard/setup/internal/workpiece"
)

// minutes are what one plan takes, run in three ways, and what it took before.
type minutes struct {
	cuts, setups, passes                  int
	byPiece, plain, searched, low, before joinery.Time
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
	m.setups, m.passes = len(d.Setups), d.Changes.Runs
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

// saferNow are plans that take longer than before for a reason: tenons were cut
// with a bit of an inch, which no end is crossed with any more, or mortises were
// dropped onto the bit over a short tail, at which the other side goes to the
// fence now.
var saferNow = []string{"boot-bench", "chair", "coffee-table", "garden-bench", "garden-gate", "wall-shelf", "workbench", "writing-desk"}

// before reads what the decks took whose ends were cut at one fence distance
// after another, and which were chosen as if passes cost nothing.
func before(t testing.TB) map[string]joinery.Time {
	t.Helper()
	data, err := os.ReadFile("testdata/before.tsv")
	require.NoError(t, err)
	took := map[string]joinery.Time{}
	for line := range strings.Lines(string(data)) {
		if fields := strings.Split(strings.TrimSpace(line), "\t"); len(fields) == 4 {
			minutes, err := strconv.ParseFloat(fields[3], 64)
			require.NoError(t, err)
			took[fields[0]] = joinery.Time(math.Round(minutes * float64(joinery.Minute)))
		}
	}
	return took
}

// The table of the README comes from here.
func TestMinutesInTheReadme(t *testing.T) {
	t.Parallel()
	readme, err := os.ReadFile("../README.md")
	require.NoError(t, err)
	var table strings.Builder
	var sum minutes
	row := func(name string, m minutes) {
		was := "–" // there was no such kind of cut
		if m.before > 0 {
			was = fmt.Sprintf("%g", m.before.Minutes())
		}
		fmt.Fprintf(&table, "| %s | %d | %d | %d | %g | %g | %g | %s |\n", name, m.cuts, m.setups, m.passes,
			m.byPiece.Minutes(), m.plain.Minutes(), m.searched.Minutes(), was)
	}
	plans, before := workpiece.RealPlans(t), before(t)
	for _, name := range slices.Sorted(maps.Keys(plans)) {
		m := minutesOf(t, plans[name])
		m.before = before[name]
		if m.low > 0 { // nothing is proved of runs that begin in a recess
			require.Equal(t, m.low, m.searched, name)
		}
		if !slices.Contains(saferNow, name) && m.before > 0 {
			assert.LessOrEqual(t, m.searched, m.before, "%s is no dearer than before", name)
		}
		row(strings.ReplaceAll(name, "-", " "), m)
		sum.cuts += m.cuts
		sum.setups += m.setups
		sum.passes += m.passes
		sum.before += m.before
		sum.byPiece += m.byPiece
		sum.plain += m.plain
		sum.searched += m.searched
	}
	row("all "+fmt.Sprint(len(plans)), sum)
	assert.True(t, strings.Contains(string(readme), table.String()), "put this table in the README:\n%s", table.String())
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
