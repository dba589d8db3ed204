package planfile_test

import (
	"fmt"
	"strings"
	"testing"

	"fencecard/joinery/planfile"
)

// planOf writes a plan of posts with ten cuts each, as a maker would.
func planOf(cuts int) []byte {
	var b strings.Builder
	b.WriteString("unit: in\nwood: white oak\npieces:\n")
	for post := range cuts / 10 {
		fmt.Fprintf(&b, "  - piece: post %d\n    size: {left-right: 1 1/2, front-back: 1 1/2, top-bottom: 30}\n    cuts:\n", post)
		for i := range 10 {
			fmt.Fprintf(&b, "      - mortise: rail %d\n        in: right\n        width: 3/8\n        setback: 3/8 from front\n        span: %d to %d 1/2 from top\n        depth: 7/8\n", i, 2*i+1, 2*i+2)
		}
	}
	return []byte(b.String())
}

func BenchmarkRead(b *testing.B) {
	for _, cuts := range []int{10, 100, 1_000, 10_000} {
		data := planOf(cuts)
		b.Run(fmt.Sprint(cuts), func(b *testing.B) {
			b.ReportAllocs()
			b.SetBytes(int64(len(data)))
			for b.Loop() {
				if _, err := planfile.Read("plan.yaml", data, nil); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
