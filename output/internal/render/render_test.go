package render_test

import (
	"bytes"
	"fmt"
	"testing"

	"github.com/jung-kurt/gofpdf"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/internal/render"
)

// sample is a page with three upright lines at known places and two texts.
func sample(t *testing.T, wide float64) []byte {
	t.Helper()
	f := gofpdf.NewCustom(&gofpdf.InitType{UnitStr: "mm", Size: gofpdf.SizeType{Wd: wide, Ht: 80}})
	f.SetAutoPageBreak(false, 0)
	f.AddPage()
	f.SetLineWidth(0.25)
	for _, x := range []float64{20, 45.5, 110.3} {
		f.Line(x, 30, x, 60)
	}
	f.SetFont("Helvetica", "", 20)
	f.Text(10, 20, "HHH")
	f.TransformBegin()
	f.TransformRotate(90, 60, 70)
	f.Text(60, 70, "up")
	f.TransformEnd()
	var b bytes.Buffer
	require.NoError(t, f.Output(&b))
	return b.Bytes()
}

// TestMeasuresWhatIsThere finds the sample's lines and texts where they were
// put, at two resolutions and on a part of the page.
func TestMeasuresWhatIsThere(t *testing.T) {
	for _, wide := range []float64{120, 6 * 25.4} {
		t.Run(fmt.Sprint(wide), func(t *testing.T) { measure(t, wide) })
	}
}

func measure(t *testing.T, wide float64) {
	d := render.Open(t, sample(t, wide))
	require.Equal(t, 1, d.Pages())
	w, h := d.Size(0)
	assert.InDelta(t, wide, w, 0.01)
	assert.InDelta(t, 80, h, 0.01)
	for _, dpi := range []int{150, 300} {
		for _, part := range []render.Box{d.WholePage(0), {Left: 13, Top: 25, Right: 116, Bottom: 66}} {
			strokes := d.Picture(0, dpi, part).Across(40, 15, 115)
			require.Len(t, strokes, 3)
			for i, x := range []float64{20, 45.5, 110.3} {
				assert.InDelta(t, x, strokes[i].Middle, 0.02, "%d dpi", dpi)
				assert.InDelta(t, x-0.125, strokes[i].From, 0.05)
				assert.InDelta(t, x+0.125, strokes[i].To, 0.05)
			}
		}
	}
	pieces := d.Pieces(0)
	require.Len(t, pieces, 2)
	assert.Equal(t, "HHH", pieces[0].Text)
	assert.InDelta(t, 20*25.4/72, pieces[0].Size, 0.01)
	assert.False(t, pieces[0].Upward)
	assert.InDelta(t, 20, pieces[0].Box.Bottom, 0.1)
	assert.InDelta(t, 10, pieces[0].Box.Left, 1)
	assert.True(t, pieces[1].Upward)
	assert.InDelta(t, 20*25.4/72, pieces[1].Size, 0.01)
	assert.Contains(t, d.Text(0), "HHH")
}
