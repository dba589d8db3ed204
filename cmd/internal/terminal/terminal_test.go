package terminal

import (
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Folded lines say what they said, fit where their words do, and what is shown of
// a file stays as it is.
func TestFolding(t *testing.T) {
	const message = "plan.yaml:3:1: the quick fence runs over the lazy bit and stands five sixteenths too far\n" +
		"    setback: 5,5 from bottom          # near wall, from the side that goes to the fence\n" +
		"             ^\n" +
		"  write 5.5, or 5 1/2, or whatever else a length may look like when it is typed in\n"
	for width := 0; width < 120; width++ {
		var out strings.Builder
		n, err := folded{&out, width}.Write([]byte(message))
		require.NoError(t, err)
		assert.Equal(t, len(message), n)
		assert.Equal(t, strings.Fields(message), strings.Fields(out.String()))
		assert.Contains(t, out.String(), "\n    setback: 5,5 from bottom          # near wall, from the side that goes to the fence\n             ^\n")
		if width < narrowest {
			assert.Equal(t, message, out.String())
			continue
		}
		for line := range strings.Lines(out.String()) {
			if !strings.HasPrefix(line, "    ") {
				assert.LessOrEqual(t, utf8.RuneCountInString(strings.TrimSuffix(line, "\n")), width)
			}
		}
	}
	var out strings.Builder
	_, err := folded{&out, 40}.Write([]byte("  the first is in by two blanks and so folds\n\n"))
	require.NoError(t, err)
	assert.Equal(t, "  the first is in by two blanks and so\n    folds\n\n", out.String())
}
