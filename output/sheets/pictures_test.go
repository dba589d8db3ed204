package sheets

import (
	"bytes"
	"image"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
)

// TestPagePictures holds the pictures of pages that the README shows to what
// the boot bench prints now; a few words may differ, not more. They are drawn
// anew when the environment variable FENCECARD_GOLDEN is "update".
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
		assert.Less(t, difference(now, shown.(*image.Gray)), 0.02, "%s: draw it anew", file)
	}
	assert.Len(t, seen, 2)
}

// difference is the mean difference of two pictures of a size, 1 where one is
// white and the other black.
func difference(a, b *image.Gray) float64 {
	sum := 0.0
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			sum += math.Abs(float64(a.GrayAt(x, y).Y) - float64(b.GrayAt(x, y).Y))
		}
	}
	return sum / 255 / float64(a.Bounds().Dx()*a.Bounds().Dy())
}
