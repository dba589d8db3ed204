package terminal

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A code drawn in half blocks is read back dot by dot.
func TestHalfBlocks(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for _, size := range []int{21, 33, 40} {
		dots := map[[2]int]bool{}
		for y := range size {
			for x := range size {
				dots[[2]int{x, y}] = random.IntN(2) == 0
			}
		}
		drawn := strings.Split(strings.TrimSuffix(halfBlocks(size, func(x, y int) bool { return dots[[2]int{x, y}] }), "\n"), "\n")
		require.Len(t, drawn, (size+2*quiet+1)/2)
		for row, line := range drawn {
			letters := []rune(line)
			require.Len(t, letters, size+2*quiet)
			for column, letter := range letters {
				for half, light := range []string{"█▀", "█▄"} {
					x, y := column-quiet, 2*row+half-quiet
					if y < size+quiet {
						assert.Equal(t, !dots[[2]int{x, y}], strings.ContainsRune(light, letter), "%d %d", x, y)
					}
				}
			}
		}
	}
}
