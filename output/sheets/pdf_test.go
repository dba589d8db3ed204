package sheets

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/paper"
)

// TestSameBytes makes the same deck twice, and again from a plan made anew.
func TestSameBytes(t *testing.T) {
	var first, second, third bytes.Buffer
	d := legDeck(t)
	require.NoError(t, PDF(&first, d, Pages{}))
	require.NoError(t, PDF(&second, d, Pages{}))
	require.NoError(t, PDF(&third, legDeck(t), Pages{}))
	assert.Equal(t, first.Bytes(), second.Bytes())
	assert.Equal(t, first.Bytes(), third.Bytes())
}

func TestPageCount(t *testing.T) {
	d := legDeck(t)
	for _, o := range []Pages{{}, {Strips: true}, {Only: OnlyStrips}} {
		var pdf bytes.Buffer
		require.NoError(t, PDF(&pdf, d, o))
		// Every page is an object of its own.
		assert.Equal(t, bytes.Count(pdf.Bytes(), []byte("<</Type /Page\n")), paper.PageCount(pdf.Bytes()))
		assert.NotZero(t, paper.PageCount(pdf.Bytes()))
	}
	assert.Zero(t, paper.PageCount([]byte(`{"format": "fencecard deck 2"}`)))
}
