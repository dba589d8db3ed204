package shelf

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// toldDisk tells what is done to it, in order.
type toldDisk struct {
	osDisk
	told *[]string
	sync error // that a sync ends with
}

type toldGrowing struct {
	growing
	disk toldDisk
}

func (d toldDisk) tell(what string) { *d.told = append(*d.told, what) }

func (d toldDisk) grow(path string, mode fs.FileMode) (growing, error) {
	f, err := d.osDisk.grow(path, mode)
	return toldGrowing{f, d}, err
}

func (d toldDisk) syncFolder(path string) {
	d.tell("sync folder " + filepath.Base(path))
	d.osDisk.syncFolder(path)
}

func (f toldGrowing) Write(data []byte) (int, error) {
	f.disk.tell("write")
	return f.growing.Write(data)
}

func (f toldGrowing) Sync() error {
	f.disk.tell("sync")
	return errors.Join(f.disk.sync, f.growing.Sync())
}

func (f toldGrowing) Truncate(size int64) error {
	f.disk.tell("truncate")
	return f.growing.Truncate(size)
}

func (f toldGrowing) Close() error {
	f.disk.tell("close")
	return f.growing.Close()
}

func line(text string) func(Growing) error {
	return func(f Growing) error {
		_, err := f.Write([]byte(text + "\n"))
		return err
	}
}

// What is answered as stored has been synced, and so has the name of a new file.
func TestWhatGrewIsSynced(t *testing.T) {
	folder := filepath.Join(t.TempDir(), "kept")
	require.NoError(t, os.Mkdir(folder, 0o777))
	path := filepath.Join(folder, "ticks")
	grow := func(d toldDisk, add func(Growing) error) ([]string, error) {
		d.told = &[]string{}
		err := shelf{d}.grow(t.Context(), path, add)
		return *d.told, err
	}
	told, err := grow(toldDisk{}, line("one"))
	require.NoError(t, err)
	assert.Equal(t, []string{"write", "sync", "sync folder kept", "close"}, told)
	told, err = grow(toldDisk{}, line("two"))
	require.NoError(t, err)
	assert.Equal(t, []string{"write", "sync", "close"}, told)

	told, err = grow(toldDisk{}, func(f Growing) error { return errors.Join(line("three")(f), errFull) })
	assert.ErrorIs(t, err, errFull)
	assert.Equal(t, []string{"write", "truncate", "close"}, told)
	holds(t, folder, map[string]string{"ticks": "one\ntwo\n"})

	told, err = grow(toldDisk{sync: errFull}, line("three"))
	assert.ErrorIs(t, err, errFull, "what could not be synced is not stored")
	assert.Equal(t, []string{"write", "sync", "truncate", "close"}, told)
	holds(t, folder, map[string]string{"ticks": "one\ntwo\n"})
}

func TestWhatGrowsIsPrivate(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("Windows has other rights")
	}
	path := filepath.Join(t.TempDir(), "ticks")
	require.NoError(t, Grow(t.Context(), path, line("one")))
	rights(t, path, 0o600)
}
