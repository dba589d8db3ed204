package ticks_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"time"

	"fencecard/cmd/internal/ticks"
)

func Example() {
	folder, err := os.MkdirTemp("", "ticks")
	if err != nil {
		fmt.Println(err)
		return
	}
	defer os.RemoveAll(folder)
	ctx, noon := context.Background(), time.Date(2026, 11, 26, 12, 0, 0, 0, time.UTC)
	f, err := ticks.Open(ctx, filepath.Join(folder, "ticks.jsonl"), "0123456789abcdef", "bench.yaml", noon)
	if err != nil {
		fmt.Println(err)
		return
	}
	err = f.Add(ctx, []ticks.Tick{{
		Device: "tablet", Counter: 1, Time: noon, Plan: f.Plan(), Batch: f.Batch(),
		Box: ticks.Box{Says: "00000000000000aa", Height: 1, Piece: "leg", Copy: 2}, On: true,
	}})
	fmt.Println(err, f.Batch(), f.Stands())
	// Output: <nil> 2026-11-26 a [{{00000000000000aa 1 leg 2} true}]
}
