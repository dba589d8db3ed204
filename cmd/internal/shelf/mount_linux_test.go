package shelf

import (
	"bytes"
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// mounted returns a small disk of its own, or skips where that is not allowed.
func mounted(t *testing.T, options string) string {
	t.Helper()
	folder := t.TempDir()
	if err := syscall.Mount("tmpfs", folder, "tmpfs", 0, options); err != nil {
		t.Skipf("no disk can be mounted here: %v", err)
	}
	t.Cleanup(func() { syscall.Unmount(folder, 0) })
	return folder
}

func TestARealFullDisk(t *testing.T) {
	folder := mounted(t, "size=64k")
	path := filepath.Join(folder, "book")
	line := bytes.Repeat([]byte("setup\n"), 100)
	var last []byte
	err := error(nil)
	for range 1000 {
		if err = Update(t.Context(), path, adding(string(line))); err != nil {
			break
		}
		last = append(last, line...)
	}
	require.ErrorIs(t, err, syscall.ENOSPC)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, last, data)
	assert.Empty(t, temps(path))
	assert.Empty(t, temps(path+BackupEnding))
}

func TestAReadOnlyDisk(t *testing.T) {
	folder := mounted(t, "")
	path := filepath.Join(folder, "book")
	require.NoError(t, Update(t.Context(), path, adding("1")))
	require.NoError(t, syscall.Mount("", folder, "", syscall.MS_REMOUNT|syscall.MS_RDONLY, ""))
	assert.ErrorIs(t, Update(t.Context(), path, adding("2")), syscall.EROFS)
	holds(t, folder, map[string]string{"book": "1"})
}

func TestAReadOnlyFolder(t *testing.T) {
	if os.Geteuid() == 0 {
		t.Skip("root may write everywhere")
	}
	folder := t.TempDir()
	path := filepath.Join(folder, "book")
	require.NoError(t, os.WriteFile(path, []byte("1"), 0o666))
	require.NoError(t, os.Chmod(folder, 0o555))
	t.Cleanup(func() { os.Chmod(folder, 0o777) }) // or it cannot be emptied
	assert.ErrorIs(t, Update(t.Context(), path, adding("2")), os.ErrPermission)
	holds(t, folder, map[string]string{"book": "1"})
}
