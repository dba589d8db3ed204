package main

import (
	"bytes"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/manual"
	"fencecard/cmd/internal/session"
)

// By its ending a file gets what --format writes, for every format of every command,
// and the help names them all.
func TestAFileHoldsWhatItsEndingSays(t *testing.T) {
	folder := t.TempDir()
	run := func(args ...string) []byte {
		cmd := exec.Command("fencecard", args...)
		cmd.Dir = folder
		var told bytes.Buffer
		cmd.Stderr = &told
		out, err := cmd.Output()
		require.NoError(t, err, "%s: %s", args, told.String())
		return out
	}
	run("book", "keep", "--setup", "1", "--name", "x", "--book", "book.txt")
	// Of stamped pages the beginning: what goes to standard output has no stamp.
	same := func(f *session.Format, args ...string) {
		want := run(append(args, "--format", f.Name, "--out", "-")...)
		require.NotEmpty(t, want)
		for _, ending := range f.Endings {
			run(append(args, "--force", "--out", "printed"+ending)...)
			got, err := os.ReadFile(filepath.Join(folder, "printed"+ending))
			require.NoError(t, err)
			if f.Stamped {
				want, got = want[:200], got[:200]
			}
			assert.Equal(t, string(want), string(got), "%s as %s", args, ending)
		}
	}
	help := manual.Topic("cards")
	for _, f := range cardFormats {
		args := []string{"cards"}
		if f.Format == session.SVG {
			args = append(args, "--only-run", "1.1")
		}
		same(f.Format, args...)
		assert.Contains(t, help, f.Endings[0], "help cards")
	}
	for _, f := range keptFormats {
		same(f.Format, "book", "show", "x", "--book", "book.txt")
	}
	said, err := exec.Command("fencecard", "cards", "--help").Output()
	require.NoError(t, err)
	flat := strings.Join(strings.Fields(string(said)), " ")
	assert.Contains(t, flat, "pdf, text or json; html for a page to tick; svg for one run, setup, piece or joint")
	assert.Contains(t, flat, "by its ending as pdf, txt, json, html or svg; - for standard output; may be given again")
}
