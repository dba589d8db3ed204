package book

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every line keeps its own end, also where a file has both.
func TestMixedLineEndsStay(t *testing.T) {
	_, d := bookOf(t)
	before := strings.Replace(sample, "\n", "\r\n", 3) + "# a remark without an end"
	b, err := Read("book.txt", []byte(before))
	require.NoError(t, err)
	grown, err := b.Put(keepAs(t, d, 1, "new"), false)
	require.NoError(t, err)
	assert.True(t, strings.HasPrefix(string(grown.Bytes()), before), "%q", grown.Bytes())
	rest, err := grown.Forget("new")
	require.NoError(t, err)
	assert.Equal(t, before+"\r\n", string(rest.Bytes()))
}

// A book that is too much of something says so where it begins, and the rest of
// it is read.
func TestTooMuchOfSomething(t *testing.T) {
	for _, test := range []struct{ name, book, says string }{
		{"lines", sample + "setup: much\n" + strings.Repeat("  note: x\n", mostLines), "this setup has more than 30000 lines"},
		{"letters", sample + "setup: " + strings.Repeat("é", mostName+1) + "\n", "this name is longer than 200 letters"},
		{"heights", sample + "setup: much\n  heights: " + strings.Repeat("1,", mostHeights) + "1\n", "there are 5001 heights"},
		{"setups", sample + strings.Repeat("\n", 3) + manySetups(mostEntries), "it has more than 10000 setups"},
	} {
		b, err := Read("book.txt", []byte(test.book))
		require.NoError(t, err, test.name)
		assert.Contains(t, b.Damage().Error(), test.says, test.name)
		_, err = b.NamedOrCoded("Seat rail mortises")
		assert.NoError(t, err, test.name)
	}
	full, err := Read("book.txt", []byte(sample+manySetups(mostEntries)))
	require.NoError(t, err)
	_, d := bookOf(t)
	_, err = full.Put(keepAs(t, d, 1, "one more"), false)
	assert.ErrorContains(t, err, "the book is full")
}

// manySetups writes setups of the least that one has.
func manySetups(n int) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, "setup: %d\n  bit: a\n  diameter: 1\n  fence to near edge: 1\n", i)
	}
	return b.String()
}
