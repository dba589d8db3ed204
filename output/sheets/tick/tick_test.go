package tick_test

import (
	"fmt"
	"strconv"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/output/paper"
	"fencecard/output/setting"
	"fencecard/output/sheets/tick"
)

// Seven pieces are ticked one by one, twenty-three tallied in fives.
func ExampleTally() {
	for _, count := range []int{7, 23} {
		fmt.Print(count, ":")
		for _, p := range tick.Tally(setting.Setter{}, count, 180).Parts {
			fmt.Print(" ", p.Name, p.Says)
		}
		fmt.Println()
	}
	// Output:
	// 7: boxes boxes boxes boxes boxes boxes boxes
	// 23: drawing text5 drawing text10 drawing text15 drawing text20 drawing text23
}

// However many pieces there are, there is room to count to the last of them, in the
// width, and nothing lies on another.
func TestRoomToCount(t *testing.T) {
	for _, w := range []paper.Paper{30, 75, 180} {
		for count := 1; count <= 100; count++ {
			b := tick.Tally(setting.Setter{}, count, w)
			var boxes []paper.Box
			counted := 0
			for _, p := range b.Parts {
				switch p.Name {
				case "text":
					counted, _ = strconv.Atoi(p.Says)
					continue
				case "boxes":
					counted++
				}
				boxes = append(boxes, p.Box)
			}
			assert.Equal(t, count, counted, "%d in %v", count, w)
			for i, box := range boxes {
				assert.LessOrEqual(t, box.Right(), w+paper.Touching, "%d in %v", count, w)
				assert.LessOrEqual(t, box.Bottom(), b.H+paper.Touching, "%d in %v", count, w)
				for _, other := range boxes[:i] {
					assert.False(t, box.Overlaps(other), "%d in %v", count, w)
				}
			}
		}
	}
}
