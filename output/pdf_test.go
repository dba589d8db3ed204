package output

import (
	"bytes"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
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
