package yamlfile_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/planfile/yamlfile"
)

// Each value takes just the bytes it stands in, whatever ends the lines, and whatever
// letters of several bytes stand before it.
func TestTheBytesOfAValue(t *testing.T) {
	const plan = `title: "Größe: 3/8"   # a remark
note: a text that goes on
  over two lines
empty:
long: |
  kept
  as it is
list:
  - it's one
  # between
  - 'it''s two'
flow: {a: [1, 2 ], b: "x, y"}
`
	for _, end := range []string{"\n", "\r\n", "\r"} {
		text := "\ufeff" + strings.ReplaceAll(plan, "\n", end)
		w, err := yamlfile.ReadWritten("plan.yaml", []byte(text))
		require.NoError(t, err)
		assert.Equal(t, end, yamlfile.LineEnd([]byte(text)))
		bytes := func(w *yamlfile.Written) string { return strings.ReplaceAll(text[w.From:w.To], end, "\n") }
		assert.Equal(t, `"Größe: 3/8"`, bytes(w.Value("title")))
		assert.Equal(t, "Größe: 3/8", w.Value("title").Text)
		assert.Equal(t, "a text that goes on\n  over two lines", bytes(w.Value("note")))
		assert.Equal(t, yamlfile.WrittenNothing, w.Value("empty").Kind)
		assert.Empty(t, bytes(w.Value("empty")))
		assert.Equal(t, "|\n  kept\n  as it is", bytes(w.Value("long")))
		list := w.Value("list")
		require.Len(t, list.Items, 2)
		assert.Equal(t, "- it's one", text[list.Items[0].Dash:list.Items[0].To])
		assert.Equal(t, "- 'it''s two'", text[list.Items[1].Dash:list.Items[1].To])
		flow := w.Value("flow")
		assert.True(t, flow.Flow)
		assert.Equal(t, `{a: [1, 2 ], b: "x, y"}`, bytes(flow))
		assert.Equal(t, "[1, 2 ]", bytes(flow.Value("a")))
		assert.Nil(t, flow.Value("c"))
	}
}
