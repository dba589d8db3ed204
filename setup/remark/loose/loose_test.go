package loose

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"

	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/setup/deck"
)

// raster is the section of a piece in squares of a side of 1, true where the
// wood is gone.
type raster [12][12]bool

// take removes the room of a run that is fed left to right.
func (s *raster) take(r *deck.Run) {
	room := roomsOf(r)[0]
	for y := room[1].Lo; y < room[1].Hi; y++ {
		for z := room[2].Lo; z < room[2].Hi; z++ {
			s[y][z] = true
		}
	}
}

// parts counts the parts that hang together by a side.
func (s raster) parts() int {
	var fill func(y, z int)
	fill = func(y, z int) {
		if y < 0 || z < 0 || y >= len(s) || z >= len(s) || s[y][z] {
			return
		}
		s[y][z] = true
		fill(y+1, z)
		fill(y-1, z)
		fill(y, z+1)
		fill(y, z-1)
	}
	count := 0
	for y := range s {
		for z := range s[y] {
			if !s[y][z] {
				count++
				fill(y, z)
			}
		}
	}
	return count
}

// TestPartingsAgainstARaster cuts grooves at random, from four sides, some at
// several fence distances, and counts the parts of the section square by square
// after every run.
func TestPartingsAgainstARaster(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	some := func(most int) measure.Length { return measure.Length(rng.IntN(most)) }
	parted := 0
	for range 3000 {
		p := &joinery.Piece{Size: joinery.Size{40, 12, 12}}
		bit := &joinery.Bit{Diameter: 2}
		var runs []*deck.Run
		for setup := 1; setup <= 7; setup++ {
			down := []joinery.Side{joinery.Front, joinery.Back, joinery.Top, joinery.Bottom}[rng.IntN(4)]
			near := joinery.LeftRight.Third(down.Dimension()).Low()
			c := &joinery.Cut{Kind: &joinery.Groove}
			ch := joinery.Channel{Down: down, Near: near, Setback: some(9), Width: 2 + some(3), Depth: 1 + some(12), Hi: 40}
			ch.Width = min(ch.Width, 12-ch.Setback)
			for at := ch.Setback; at+2 <= ch.Setback+ch.Width; at++ {
				step := deck.Step{Bit: bit, Down: down, Fence: near, NearEdge: at}
				runs = append(runs, &deck.Run{Setup: setup, Index: len(runs), Piece: p, Cut: c, Channel: ch, Step: step})
			}
		}
		var want, got []*deck.Run
		var s raster
		for _, r := range runs {
			before := s.parts()
			if s.take(r); s.parts() > before {
				want = append(want, r)
			}
		}
		found, whole := Partings(runs)
		assert.True(t, whole)
		for _, f := range found {
			got = append(got, f.Run)
		}
		parted += len(want)
		if !assert.Equal(t, want, got) {
			return
		}
	}
	assert.Greater(t, parted, 2000)
}

// A plan that means harm has its look for loose parts cut short, and says so.
func TestTooManyCutsInOneAnother(t *testing.T) {
	p := &joinery.Piece{Size: joinery.Size{40, 10_000, 12}}
	var runs []*deck.Run
	for i := range 200 {
		down := []joinery.Side{joinery.Top, joinery.Bottom}[i%2]
		ch := joinery.Channel{Down: down, Near: joinery.Front, Setback: measure.Length(20 * i), Width: 30, Depth: 3, Hi: 40}
		runs = append(runs, &deck.Run{Setup: 1, Index: i, Piece: p, Cut: &joinery.Cut{}, Channel: ch,
			Step: deck.Step{Bit: &joinery.Bit{Diameter: 30}, Down: down, Fence: joinery.Front, NearEdge: ch.Setback}})
	}
	_, whole := Partings(runs[:100])
	assert.True(t, whole, "a hundred are looked at")
	for _, r := range runs {
		r.Channel.Depth = 6
	}
	_, whole = Partings(runs)
	assert.False(t, whole)
}
