//go:build unix

package shelf

import (
	"os"
	"path/filepath"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A pipe is not opened: a test that hangs here has failed.
func TestAPipeIsNotWaitedFor(t *testing.T) {
	for _, ending := range []string{"", lockEnding, BackupEnding} {
		path := filepath.Join(t.TempDir(), "book")
		if ending != "" {
			require.NoError(t, os.WriteFile(path, []byte("x"), 0o666))
		}
		require.NoError(t, syscall.Mkfifo(path+ending, 0o666))
		err := Update(t.Context(), path, adding("y"))
		assert.ErrorIs(t, err, ErrNoFile)
		assert.Equal(t, path+ending, pathOf(t, err))
		assert.ErrorIs(t, Ordinary(path+ending), ErrNoFile)
	}
}
