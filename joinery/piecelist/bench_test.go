package piecelist_test

import (
	"fmt"
	"strings"
	"testing"

	"fencecard/joinery/piecelist"
)

// listOf writes a list of so many rows, of which every fourth has a date for its
// thickness.
func listOf(rows int) []byte {
	var b strings.Builder
	b.WriteString("Part,Qty,Length,Width,Thickness,Wood,Note\n")
	for i := range rows {
		thickness := []string{"3/4", "0.75", `"3/4"""`, "3-Apr"}[i%4]
		fmt.Fprintf(&b, "Rail %d,%d,%d 1/2,3 1/2,%s,white oak,\"tenons, both ends\"\n", i, 1+i%4, 10+i%40, thickness)
	}
	return []byte(b.String())
}

func BenchmarkRead(b *testing.B) {
	for _, rows := range []int{10, 100, 1_000, 10_000} {
		data := listOf(rows)
		b.Run(fmt.Sprint(rows), func(b *testing.B) {
			b.ReportAllocs()
			b.SetBytes(int64(len(data)))
			for b.Loop() {
				list, questions, err := piecelist.Read("list.csv", data, piecelist.Options{Defaults: true})
				if err != nil || questions != nil {
					b.Fatal(questions, err)
				}
				list.Plan()
			}
		})
	}
}
