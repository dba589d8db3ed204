package page_test

import (
	"bytes"
	"image/png"
	"os"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/examples"
	"fencecard/output/internal/render"
	"fencecard/output/page"
	"fencecard/output/page/browser"
)

// The README's picture of the page is a run of the boot bench as a tablet shows it now:
// how dark it is where. It is taken anew when the environment variable
// FENCECARD_GOLDEN is "update".
func TestPagePicture(t *testing.T) {
	t.Parallel()
	k := openDesk(t, deckOf(t, []byte(examples.BootBench)), page.About{Questions: askedFor("3.2")})
	b := browser.Open(t, 768, 1024)
	b.Go(k.at)
	b.Until("bench.desk.state() && document.fonts.status === 'loaded'")
	b.Until("bench.parts.go('run-3.2') !== null && " + here + ".id === 'run-3.2'")
	taken := b.Picture()
	const file = "../../testdata/pages/bench-page.png"
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		require.NoError(t, os.WriteFile(file, taken, 0o644))
	}
	shown, err := os.ReadFile(file)
	require.NoError(t, err)
	now, err := png.Decode(bytes.NewReader(taken))
	require.NoError(t, err)
	before, err := png.Decode(bytes.NewReader(shown))
	require.NoError(t, err)
	assert.Equal(t, before.Bounds(), now.Bounds())
	assert.Less(t, render.Difference(now, before), 0.03, "%s: take it anew", file)
}
