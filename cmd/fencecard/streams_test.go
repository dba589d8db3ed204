package main

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/joinery/plantext"
)

// A disk without room for standard output is a failure, whoever writes there.
func TestStandardOutputThatFails(t *testing.T) {
	for _, line := range []string{"", "--help", "cards --help", "help plan", "help", "completion bash", "version", "man", "wood", "shop", "cards --format text", "new -"} {
		var told bytes.Buffer
		code := run(t.Context(), strings.Fields(line), streams{strings.NewReader(""), noRoom{}, &told})
		assert.Equal(t, exitFault, code, line)
		assert.True(t, strings.HasSuffix(told.String(), "standard output: no space left on device\n"), "%s: %s", line, told.String())
	}
}

type noRoom struct{}

func (noRoom) Write([]byte) (int, error) { return 0, errors.New("no space left on device") }

// Names that would move the cursor of a terminal, or turn the direction of
// writing, reach none.
func TestHarmlessMessages(t *testing.T) {
	const bad = "a\x1b[2Jb\u202ec\u009bd\x07"
	folder := t.TempDir()
	named := bad
	if runtime.GOOS == "windows" {
		named = "a\u202eb" // no controls in its names
	}
	plan := filepath.Join(folder, named+".yaml")
	require.NoError(t, os.WriteFile(plan, []byte(legPlan), 0o666))
	book := filepath.Join(folder, named+".txt")
	for _, args := range [][]string{
		{"--" + bad}, {"cards", "--" + bad}, {"cards", "-" + bad}, {bad}, {"help", bad}, {"cards", bad}, {"cards", "a", bad},
		{"cards", "--format", bad}, {"cards", "--paper", bad}, {"cards", "--batch", bad}, {"wood", "show", bad},
		{"cards", plan, "--out", filepath.Join(folder, bad, "x.pdf")},
		{"cards", plan, "--out", filepath.Join(folder, named+".pdf")},
		{"cards", plan, "--format", "json"},
		{"new", filepath.Join(folder, named+".new")}, {"new", filepath.Join(folder, named+".new")},
		{"book", "list", "--book", filepath.Join(plan, bad)}, {"book", "show", bad, "--book", book},
		{"book", "keep", plan, "--setup", "1", "--name", "x", "--book", book}, {"book", "list", "--book", book}, {"book", "list", "--book", book, "--format", "json"},
		{"book", "show", "x", "--book", book, "--format", "pdf", "--out", filepath.Join(folder, named+".card")},
		{"book", "forget", "x", "--book", book},
	} {
		var told bytes.Buffer
		run(t.Context(), args, streams{strings.NewReader(""), &told, &told})
		assert.NotEmpty(t, told.String(), "%q", args)
		for _, r := range told.String() {
			assert.False(t, r != '\n' && r != '\t' && plantext.Unprintable(r), "%q: %q in %q", args, r, told.String())
		}
	}
}
