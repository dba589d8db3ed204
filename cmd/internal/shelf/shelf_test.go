package shelf

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// holds checks a folder's files by name and content, locks left out.
func holds(t *testing.T, folder string, want map[string]string) {
	t.Helper()
	entries, err := os.ReadDir(folder)
	require.NoError(t, err)
	got := map[string]string{}
	for _, e := range entries {
		if filepath.Ext(e.Name()) == lockEnding {
			continue
		}
		data, err := os.ReadFile(filepath.Join(folder, e.Name()))
		require.NoError(t, err)
		got[e.Name()] = string(data)
	}
	assert.Equal(t, want, got)
}

func TestNewAndReplace(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "a file ä.txt")
	require.NoError(t, New(path, []byte("one")))
	assert.ErrorIs(t, New(path, []byte("two")), fs.ErrExist)
	holds(t, folder, map[string]string{"a file ä.txt": "one"})
	require.NoError(t, Replace(path, []byte("three")))
	require.NoError(t, Replace(filepath.Join(folder, "b"), nil))
	holds(t, folder, map[string]string{"a file ä.txt": "three", "b": ""})
	assert.ErrorIs(t, New(filepath.Join(folder, "no", "x"), nil), fs.ErrNotExist)
}

func TestWhatIsNoFileIsNotReplaced(t *testing.T) {
	folder := t.TempDir()
	assert.Error(t, Replace(folder, []byte("x")))
	assert.ErrorIs(t, Update(t.Context(), folder, adding("x")), ErrNoFile)
	assert.NoError(t, Replace(os.DevNull, []byte("x")))
	assert.ErrorIs(t, Update(t.Context(), os.DevNull, adding("x")), ErrNoFile)
	assert.ErrorIs(t, Ordinary(os.DevNull), ErrNoFile)
	assert.DirExists(t, folder)
}

// rights checks who may read and write a file, and says it as chmod does.
func rights(t *testing.T, path string, want fs.FileMode) {
	t.Helper()
	info, err := os.Stat(path)
	require.NoError(t, err)
	assert.Equal(t, fmt.Sprintf("%04o", want), fmt.Sprintf("%04o", info.Mode().Perm()), path)
}

func TestRightsStay(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has other rights")
	}
	path := filepath.Join(t.TempDir(), "f")
	require.NoError(t, os.WriteFile(path, []byte("x"), 0o640))
	require.NoError(t, os.Chmod(path, 0o640))
	require.NoError(t, Replace(path, []byte("y")))
	rights(t, path, 0o640)
}

// A backup lets nobody read what the file itself does not.
func TestABackupHasTheRightsOfItsFile(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has other rights")
	}
	path := filepath.Join(t.TempDir(), "f")
	require.NoError(t, os.WriteFile(path, []byte("x"), 0o600))
	require.NoError(t, Update(t.Context(), path, adding("y")))
	rights(t, path+BackupEnding, 0o600)
}

func TestTheFileBehindALinkIsReplaced(t *testing.T) {
	folder := t.TempDir()
	real, link := filepath.Join(folder, "real"), filepath.Join(folder, "link")
	require.NoError(t, os.WriteFile(real, []byte("x"), 0o666))
	if err := os.Symlink(real, link); err != nil {
		t.Skip("no links here")
	}
	require.NoError(t, Replace(link, []byte("y")))
	require.NoError(t, Update(t.Context(), link, func(old []byte) ([]byte, error) { return append(old, 'z'), nil }))
	info, err := os.Lstat(link)
	require.NoError(t, err)
	assert.NotZero(t, info.Mode()&fs.ModeSymlink)
	data, err := os.ReadFile(real)
	require.NoError(t, err)
	assert.Equal(t, "yz", string(data))
}

// fullDisk has room for some bytes, and refuses after some calls.
type fullDisk struct {
	osDisk
	room, calls *int
}

var errFull = errors.New("no space left on device")

func (d fullDisk) spend() error {
	if *d.calls--; *d.calls < 0 {
		return errFull
	}
	return nil
}

func (d fullDisk) create(path string, mode fs.FileMode) (file, error) {
	if err := d.spend(); err != nil {
		return nil, err
	}
	f, err := d.osDisk.create(path, mode)
	return fullFile{f, d}, err
}

func (d fullDisk) grow(path string, mode fs.FileMode) (growing, error) {
	if err := d.spend(); err != nil {
		return nil, err
	}
	f, err := d.osDisk.grow(path, mode)
	return fullGrowing{f, d}, err
}

func (d fullDisk) rename(from, to string) error {
	return errors.Join(d.spend(), func() error {
		if *d.calls < 0 {
			return nil
		}
		return d.osDisk.rename(from, to)
	}())
}

func (d fullDisk) link(from, to string) error {
	if err := d.spend(); err != nil {
		return err
	}
	return d.osDisk.link(from, to)
}

type fullFile struct {
	file
	disk fullDisk
}

func (f fullFile) Write(data []byte) (int, error) { return f.disk.write(f.file, data) }

func (d fullDisk) write(to io.Writer, data []byte) (int, error) {
	n := min(len(data), *d.room)
	*d.room -= n
	written, err := to.Write(data[:n])
	if err == nil && n < len(data) {
		err = errFull
	}
	return written, err
}

func (f fullFile) Sync() error { return errors.Join(f.disk.spend(), f.file.Sync()) }

type fullGrowing struct {
	growing
	disk fullDisk
}

func (f fullGrowing) Write(data []byte) (int, error) { return f.disk.write(f.growing, data) }

// Wherever the disk fails, the old file stands and nothing is left beside it.
func TestADiskThatFillsUp(t *testing.T) {
	const old, backup, data = "the old book\n", "older\n", "the old book\nand more\n"
	works := map[string]func(s shelf, path string) error{
		"update": func(s shelf, path string) error {
			return s.update(t.Context(), path, func([]byte) ([]byte, error) { return []byte(data), nil })
		},
		"replace": func(s shelf, path string) error { return s.replace(path, []byte(data)) },
		"grow": func(s shelf, path string) error {
			return s.grow(t.Context(), path, line("and more, a line of a length"))
		},
		"new": func(s shelf, path string) error { return s.new(filepath.Join(filepath.Dir(path), "new"), []byte(data)) },
	}
	for name, work := range works {
		failures := 0
		fails := func(room, calls int) {
			folder := t.TempDir()
			path := filepath.Join(folder, "book")
			require.NoError(t, os.WriteFile(path, []byte(old), 0o666))
			require.NoError(t, os.WriteFile(path+BackupEnding, []byte(backup), 0o666))
			err := work(shelf{fullDisk{room: &room, calls: &calls}}, path)
			if err == nil {
				return
			}
			failures++
			require.ErrorIs(t, err, errFull)
			kept := backup
			if now, _ := os.ReadFile(path + BackupEnding); name == "update" && string(now) == old {
				kept = old // the backup was made before the book itself failed
			}
			holds(t, folder, map[string]string{"book": old, "book" + BackupEnding: kept})
		}
		const plenty = 1 << 20
		for room := range len(data) + len(old) {
			fails(room, plenty)
		}
		for calls := range 9 {
			fails(plenty, calls)
		}
		assert.Greater(t, failures, 20, name)
	}
}
