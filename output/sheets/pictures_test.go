package sheets

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/internal/render"
)

// TestPagePictures holds the pictures of pages that the README shows to what
// the boot bench prints now: how dark it is where. Other words, and lines that
// they push down, may differ; where things stand may not. They are drawn anew when
// the environment variable FENCECARD_GOLDEN is "update".
func TestPagePictures(t *testing.T) {
	const dpi = 72
	doc := printed(t, planDeck(t, examples.BootBench), Pages{})
	seen := map[string]bool{}
	for page := range doc.Pages() {
		text := strings.TrimSpace(doc.Text(page))
		name := ""
		switch {
		case strings.HasPrefix(text, "SETUP\r\n3"):
			name = "setup-sheet"
		case strings.HasPrefix(text, "5\r\nfront seat rail"), strings.HasPrefix(text, "1\r\nfront left leg"):
			name = "piece-cards"
		}
		if name == "" || seen[name] {
			continue
		}
		seen[name] = true
		now := doc.Picture(page, dpi, doc.WholePage(page)).Image()
		file := filepath.Join("../../testdata/pages", name+".png")
		if os.Getenv("FENCECARD_GOLDEN") == "update" {
			var b bytes.Buffer
			require.NoError(t, (&png.Encoder{CompressionLevel: png.BestCompression}).Encode(&b, now))
			require.NoError(t, os.WriteFile(file, b.Bytes(), 0o644))
		}
		data, err := os.ReadFile(file)
		require.NoError(t, err)
		shown, err := png.Decode(bytes.NewReader(data))
		require.NoError(t, err)
		assert.Equal(t, now.Bounds(), shown.Bounds())
		assert.Less(t, render.Difference(now, shown.(*image.Gray)), 0.03, "%s: draw it anew", file)
	}
	assert.Len(t, seen, 2)
}

// A page whose rows stand an inch lower is told from the one that is shown.
func TestPicturesTellLayout(t *testing.T) {
	page := printed(t, planDeck(t, examples.BootBench), Pages{Only: OnlySetups}).Picture(2, 72, render.Box{Right: 215.9, Bottom: 279.4}).Image()
	moved := image.NewGray(page.Bounds())
	for y := range page.Bounds().Dy() {
		for x := range page.Bounds().Dx() {
			moved.SetGray(x, y, color.Gray{Y: 255})
			if from := y - 72; from >= 0 {
				moved.SetGray(x, y, page.GrayAt(x, from))
			}
		}
	}
	assert.Greater(t, render.Difference(page, moved), 0.03)
	assert.Zero(t, render.Difference(page, page))
}
