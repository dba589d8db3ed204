//go:build unix

package main

import (
	"os"
	"os/exec"
	"runtime"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Pressed on a desktop, with nobody at its streams, the program opens the page where
// one begins. Output goes to a socket, as to a desktop's journal.
func TestPressed(t *testing.T) {
	if runtime.GOOS == "darwin" {
		t.Skip("a press opens a terminal there")
	}
	ends, err := syscall.Socketpair(syscall.AF_UNIX, syscall.SOCK_STREAM, 0)
	require.NoError(t, err)
	journal, ours := os.NewFile(uintptr(ends[0]), "journal"), os.NewFile(uintptr(ends[1]), "ours")
	defer ours.Close()
	cmd := exec.Command("fencecard")
	home := t.TempDir()
	cmd.Env = append(os.Environ(), "DISPLAY=:99", "HOME="+home, "XDG_DATA_HOME="+home, "PATH="+pathOfOurs(t))
	cmd.Stdout = journal
	require.NoError(t, cmd.Start())
	journal.Close()
	t.Cleanup(func() {
		_ = cmd.Process.Kill()
		_ = cmd.Wait()
	})
	assert.Regexp(t, `^http://127\.0\.0\.1:\d+/plan$`, firstLine(t, ours))
}

// pathOfOurs finds no program but ours: none is to open a browser.
func pathOfOurs(t *testing.T) string {
	t.Helper()
	path, err := exec.LookPath("fencecard")
	require.NoError(t, err)
	folder := t.TempDir()
	require.NoError(t, os.Symlink(path, folder+"/fencecard"))
	return folder
}
