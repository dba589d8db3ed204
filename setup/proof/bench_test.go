package proof_test

import (
	"fmt"
	"testing"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/planfile"
	"fencecard/setup"
	"fencecard/setup/proof"
)

// BenchmarkCheck proves the boot bench many times over, as one plan of many
// pieces; the figure to look at is runs/s.
func BenchmarkCheck(b *testing.B) {
	one, err := planfile.Read("boot-bench.yaml", examples.BootBench, nil)
	if err != nil {
		b.Fatal(err)
	}
	plan := *one
	plan.Pieces = nil
	for i := range 130 { // 10,140 runs
		for _, p := range one.Pieces {
			p.Name = fmt.Sprint(p.Name, " ", i)
			p.Cuts = append([]joinery.Cut(nil), p.Cuts...)
			plan.Pieces = append(plan.Pieces, p)
		}
	}
	d, err := setup.Make(&plan)
	if err != nil {
		b.Fatal(err)
	}
	claims := proof.Of(d)
	for b.Loop() {
		if r := proof.Check(&plan, &claims); !r.Proved() {
			b.Fatal(r.Err())
		}
	}
	b.ReportMetric(float64(claims.Runs()*b.N)/b.Elapsed().Seconds(), "runs/s")
}
