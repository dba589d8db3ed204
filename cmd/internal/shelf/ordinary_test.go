package shelf

import (
	"io/fs"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// symlink makes a link, or skips the test where there are none.
func symlink(t *testing.T, to, link string) {
	t.Helper()
	if err := os.Symlink(to, link); err != nil {
		t.Skip("no links here")
	}
}

// pathOf is the path that an error names.
func pathOf(t *testing.T, err error) string {
	t.Helper()
	var named *fs.PathError
	require.ErrorAs(t, err, &named)
	return named.Path
}

// A link to what is not there yet is written through, and stays a link.
func TestADanglingLinkIsWrittenThrough(t *testing.T) {
	folder := t.TempDir()
	far := filepath.Join(folder, "far")
	require.NoError(t, os.Mkdir(far, 0o777))
	symlink(t, filepath.Join("far", "real"), filepath.Join(folder, "second"))
	symlink(t, "second", filepath.Join(folder, "first"))
	symlink(t, far, filepath.Join(folder, "folder"))
	symlink(t, filepath.Join("..", "beside"), filepath.Join(far, "up"))
	for link, real := range map[string]string{"first": "far/real", "folder/up": "beside"} {
		link, real = filepath.Join(folder, link), filepath.Join(folder, filepath.FromSlash(real))
		for _, write := range []func() error{
			func() error { return Update(t.Context(), link, adding("x")) },
			func() error { return Replace(link, []byte("x")) },
		} {
			require.NoError(t, write())
			info, err := os.Lstat(link)
			require.NoError(t, err)
			assert.NotZero(t, info.Mode()&fs.ModeSymlink, link)
			data, err := os.ReadFile(real)
			require.NoError(t, err)
			assert.Equal(t, "x", string(data))
			require.NoError(t, os.Remove(real))
		}
		assert.ErrorIs(t, New(link, []byte("x")), fs.ErrExist, "the name is taken")
	}
}

func TestACircleOfLinks(t *testing.T) {
	folder := t.TempDir()
	a, b := filepath.Join(folder, "a"), filepath.Join(folder, "b")
	symlink(t, "a", b)
	symlink(t, "b", a)
	assert.Error(t, Replace(a, []byte("x")))
	assert.Error(t, Update(t.Context(), a, adding("x")))
	info, err := os.Lstat(a)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&fs.ModeSymlink)
}

// A file that its owner protected is not replaced, although its folder allows it.
func TestAProtectedFile(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book")
	require.NoError(t, os.WriteFile(path, []byte("x"), 0o444))
	for _, err := range []error{Replace(path, []byte("y")), Update(t.Context(), path, adding("y"))} {
		assert.ErrorIs(t, err, fs.ErrPermission)
		assert.Equal(t, path, pathOf(t, err))
	}
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, "x", string(data))
}

// An error names the file that is at fault: the lock or the backup, too.
func TestWhatIsAtFaultIsNamed(t *testing.T) {
	for _, ending := range []string{lockEnding, BackupEnding, ""} {
		path := filepath.Join(t.TempDir(), "book")
		if ending != "" {
			require.NoError(t, os.WriteFile(path, []byte("x"), 0o666))
		}
		require.NoError(t, os.Mkdir(path+ending, 0o777))
		err := Update(t.Context(), path, adding("y"))
		assert.ErrorIs(t, err, ErrNoFile)
		assert.Equal(t, path+ending, pathOf(t, err))
	}
	path := filepath.Join(t.TempDir(), "no", "book")
	err := Update(t.Context(), path, adding("y"))
	assert.ErrorIs(t, err, fs.ErrNotExist)
	assert.Equal(t, path, pathOf(t, err), "not the lock: the folder is not there")

	path = filepath.Join(t.TempDir(), "book")
	require.NoError(t, os.WriteFile(path, []byte("x"), 0o666))
	require.NoError(t, os.WriteFile(path+BackupEnding, nil, 0o444))
	err = Update(t.Context(), path, adding("y"))
	assert.ErrorIs(t, err, fs.ErrPermission)
	assert.Equal(t, path+BackupEnding, pathOf(t, err))
}

// A backup that is the file itself would keep nothing.
func TestABackupThatIsTheFile(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "book")
	require.NoError(t, os.WriteFile(path, []byte("x"), 0o666))
	symlink(t, "book", path+BackupEnding)
	err := Update(t.Context(), path, adding("y"))
	assert.ErrorContains(t, err, "this is book by another name")
	assert.Equal(t, path+BackupEnding, pathOf(t, err))
}
