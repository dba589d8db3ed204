package main

import (
	"context"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The plan of every list in the gallery goes to cards once a cut is added, the
// one it shows itself below the size of the piece it names, and so it does with
// the joints that it shows.
func TestPlansOfListsRun(t *testing.T) {
	lists, err := filepath.Glob("../../testdata/piecelists/*.csv")
	require.NoError(t, err)
	ran, joined := 0, 0
	for _, list := range lists {
		plan := filepath.Join(t.TempDir(), "plan.yaml")
		said, code := runFor(t, "new", plan, "--from", list, "--defaults")
		if code == exitFault {
			assert.NoFileExists(t, plan)
			continue
		}
		require.Equal(t, exitDone, code, said)
		text, err := os.ReadFile(plan)
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(plan, withShownCut(string(text)), 0o644))
		said, code = runFor(t, "cards", plan, "--format", "text")
		assert.Equal(t, exitDone, code, "%s\n%s", list, said)
		assert.Contains(t, said, `: groove "panel"`)
		ran++
		if strings.Contains(string(text), "# joints:") {
			require.NoError(t, os.WriteFile(plan, withShownJoints(string(text)), 0o644))
			said, code = runFor(t, "cards", plan, "--format", "text")
			assert.Equal(t, exitDone, code, "%s\n%s", list, said)
			assert.Regexp(t, `: (mortise|dado|housing) "`, said)
			joined++
		}
	}
	assert.Greater(t, ran, 30)
	assert.Greater(t, joined, 20)
}

// withShownCut takes the # from the cut that a plan shows at its end and puts it
// below the size of its piece, which is the first.
func withShownCut(plan string) []byte {
	_, cut, _ := strings.Cut(plan, "#     cuts:\n")
	cut = strings.ReplaceAll("#     cuts:\n"+cut, "\n# ", "\n")[2:]
	before, after, _ := strings.Cut(plan, "    size: ")
	size, after, _ := strings.Cut(after, "\n")
	return []byte(before + "    size: " + size + "\n" + cut + after)
}

// withShownJoints takes the # from the joints that a plan shows at its end.
func withShownJoints(plan string) []byte {
	before, shown, _ := strings.Cut(plan, "# joints:\n")
	joints, after, _ := strings.Cut(shown, "#\n")
	return []byte(before + "joints:\n" + strings.ReplaceAll("\n"+joints, "\n# ", "\n")[1:] + "#\n" + after)
}

// runFor runs the program and returns all it said.
func runFor(t *testing.T, args ...string) (said string, code int) {
	var out strings.Builder
	code = run(context.Background(), args, streams{strings.NewReader(""), &out, &out})
	return out.String(), code
}
