package main

import (
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is kept for a maker who named no place for it, nobody else reads: neither the
// folder, whichever command made it, nor who ticked what when.
func TestWhatIsKeptIsPrivate(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has other rights")
	}
	program := func(data string, args ...string) *exec.Cmd {
		cmd := exec.Command("fencecard", args...)
		cmd.Env = append(os.Environ(), "XDG_DATA_HOME="+data, "HOME="+data, "FENCECARD_BOOK=")
		return cmd
	}
	rights := func(path string) string {
		info, err := os.Stat(path)
		require.NoError(t, err)
		return fmt.Sprintf("%04o", info.Mode().Perm())
	}
	kept := func(data string) (folder string) {
		require.NoError(t, filepath.WalkDir(data, func(path string, _ fs.DirEntry, err error) error {
			if filepath.Base(path) == "fencecard" {
				folder = path // deeper on some systems than on others
			}
			return err
		}))
		return folder
	}

	byBook := t.TempDir()
	said, err := program(byBook, "book", "keep", "--setup", "1", "--name", "x").CombinedOutput()
	require.NoError(t, err, string(said))
	assert.Equal(t, "0700", rights(kept(byBook)))

	byBench := t.TempDir()
	serveBy(t, program(byBench, "bench", "--no-open", "--port", "0"))
	assert.Equal(t, "0700", rights(kept(byBench)))
	assert.Equal(t, "0600", rights(filepath.Join(kept(byBench), "ticks.jsonl")))
}
