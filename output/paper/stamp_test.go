package paper_test

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/internal/render"
	"fencecard/output/paper"
)

// A stamp names what a document was made for, and a document that was changed
// since, in any byte, or added to, as readers add notes, has none.
func TestStamp(t *testing.T) {
	c := paper.NewPDF("title")
	c.Page(100, 80)
	var file bytes.Buffer
	require.NoError(t, c.Write(&file))
	plain := file.Bytes()
	stamped := paper.Stamp(plain, "bench")

	assert.True(t, paper.Stamped(stamped, "bench"))
	assert.False(t, paper.Stamped(stamped, "bed"))
	assert.False(t, paper.Stamped(plain, "bench"))
	assert.Equal(t, paper.Stamp(plain, "bench"), stamped)
	for i := range stamped {
		changed := bytes.Clone(stamped)
		changed[i] ^= 1
		require.False(t, paper.Stamped(changed, "bench"), "byte %d", i)
	}
	added := append(bytes.Clone(stamped), "1 0 obj\n(a note)\nendobj\nstartxref\n9\n%%EOF\n"...)
	assert.False(t, paper.Stamped(added, "bench"))
	for _, none := range []string{"", "startxref", "%PDF-1.3", "a plan"} {
		assert.False(t, paper.Stamped([]byte(none), "bench"))
		assert.False(t, paper.Stamped(paper.Stamp([]byte(none), "bed"), "bench"))
	}

	page := []byte("<!DOCTYPE html>\n<html><body>startxref</body>\n</html>\n")
	stampedPage := paper.Stamp(page, "bench")
	assert.True(t, paper.Stamped(stampedPage, "bench"))
	assert.False(t, paper.Stamped(stampedPage, "bed"))
	assert.False(t, paper.Stamped(page, "bench"))
	for i := range stampedPage {
		changed := bytes.Clone(stampedPage)
		changed[i] ^= 1
		require.False(t, paper.Stamped(changed, "bench"), "byte %d", i)
	}
	assert.False(t, paper.Stamped(append(bytes.Clone(stampedPage), "</html>"...), "bench"))

	// Another hand reads both alike.
	assert.Equal(t, render.Open(t, plain).Pages(), render.Open(t, stamped).Pages())
	assert.Equal(t, paper.PageCount(plain), paper.PageCount(stamped))
}
