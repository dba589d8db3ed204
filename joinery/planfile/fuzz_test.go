package planfile_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"unicode/utf8"

	"fencecard/joinery"
	"fencecard/joinery/examples"
	"fencecard/joinery/measure"
	"fencecard/joinery/planfile"
	"fencecard/joinery/planfile/shopfile"
	"fencecard/joinery/plantext"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// seed adds every broken plan and the examples.
func seed(f *testing.F) {
	files, err := filepath.Glob(filepath.Join(gallery, "*.yaml"))
	require.NoError(f, err)
	for _, file := range append(files, "../../testdata/wall-cabinet.yaml", "../../testdata/plans/hall-table.yaml", "../../testdata/plans/sideboard.yaml",
		"../../testdata/plans/bench-seat.yaml", "../../testdata/plans/panel-door.yaml") {
		data, err := os.ReadFile(file)
		require.NoError(f, err)
		f.Add(data)
	}
	f.Add(examples.BootBench)
	f.Add(examples.StarterPlan)
	f.Add(examples.StarterShop)
}

// FuzzPlan holds, for any bytes: a plan whose every cut lies inside its piece,
// or faults with a place and a way out, the same each time.
func FuzzPlan(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		plan, err := planfile.Read("plan.yaml", data, nil)
		if err != nil {
			assert.Nil(t, plan)
			checkFaults(t, data, err)
			_, again := planfile.Read("plan.yaml", data, nil)
			assert.EqualError(t, again, err.Error())
			return
		}
		require.NotEmpty(t, plan.Pieces)
		names := map[string]bool{}
		for i := range plan.Pieces {
			p := &plan.Pieces[i]
			assert.False(t, names[p.Name], "two pieces named %q", p.Name)
			names[p.Name] = true
			assert.Positive(t, p.Count)
			for _, c := range p.Cuts {
				assert.NotEmpty(t, c.Channels)
				for _, ch := range c.Channels {
					checkInside(t, p, ch)
				}
				for _, name := range c.After {
					assert.NotNil(t, p.Cut(name))
				}
			}
		}
		checkShop(t, plan.Shop)
	})
}

// FuzzShop holds, for any bytes: a shop one can work in, or faults with a
// place and a way out.
func FuzzShop(f *testing.F) {
	seed(f)
	f.Fuzz(func(t *testing.T, data []byte) {
		shop, err := shopfile.Read("shop.yaml", data, measure.Millimetres)
		if err != nil {
			checkFaults(t, data, err)
			return
		}
		checkShop(t, shop)
	})
}

func checkInside(t *testing.T, p *joinery.Piece, c joinery.Channel) {
	size := p.Size
	assert.True(t, 0 < c.Depth && c.Depth <= size.Between(c.Down))
	assert.True(t, 0 <= c.Setback && 0 < c.Width && c.Setback+c.Width <= size.Between(c.Near))
	assert.True(t, 0 <= c.Lo && c.Lo < c.Hi && c.Hi <= size[c.Run()])
}

func checkShop(t *testing.T, shop joinery.Shop) {
	assert.NotEmpty(t, shop.Bits)
	assert.Positive(t, shop.Scale.Division)
	assert.Positive(t, shop.Lift)
	names := map[string]bool{}
	for _, b := range shop.Bits {
		assert.False(t, names[b.Name], "two bits named %q", b.Name)
		names[b.Name] = true
		assert.Positive(t, b.True())
	}
	for _, m := range []joinery.Time{shop.Minutes.Bit, shop.Minutes.Fence, shop.Minutes.Height, shop.Minutes.Stop} {
		assert.GreaterOrEqual(t, m, joinery.Time(0))
	}
}

// checkFaults holds that each fault lies in the file, says what to do, and is
// printed without characters that move the cursor.
func checkFaults(t *testing.T, data []byte, err error) {
	var faults plantext.Faults
	require.True(t, errors.As(err, &faults))
	require.NotEmpty(t, faults)
	lines := strings.Count(strings.ReplaceAll(string(data), "\r\n", "\n"), "\n") + strings.Count(string(data), "\r") + 1
	for _, f := range faults {
		assert.NotEmpty(t, f.Problem)
		assert.NotEmpty(t, f.Remedy, f.Problem)
		if !bytes.Contains(data, []byte("yaml")) {
			assert.NotContains(t, f.Problem, "yaml", "words of the library")
		}
		assert.LessOrEqual(t, f.Line, lines+1)
		if f.Source != "" && utf8.ValidString(f.Source) {
			assert.LessOrEqual(t, f.Column, utf8.RuneCountInString(f.Source)+1, f.Problem)
		}
	}
	assert.NotContains(t, err.Error(), "\x1b")
}
