package shelf

import (
	"crypto/rand"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// disk is what is done to a disk and can fail there; tests put one in its
// place that fills up.
type disk interface {
	create(path string, mode fs.FileMode) (file, error)  // refuses a name that is taken
	grow(path string, mode fs.FileMode) (growing, error) // makes what is not there
	link(from, to string) error
	rename(from, to string) error
	syncFolder(path string)
}

type file interface {
	io.WriteCloser
	Sync() error
	Chmod(fs.FileMode) error
}

// growing is a file that lines are added to, behind all that it holds.
type growing interface {
	Growing
	io.Closer
	Sync() error
	Truncate(size int64) error
}

type osDisk struct{}

func (osDisk) create(path string, mode fs.FileMode) (file, error) {
	return os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
}

func (osDisk) grow(path string, mode fs.FileMode) (growing, error) {
	return os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_APPEND, mode)
}

func (osDisk) link(from, to string) error { return os.Link(from, to) }

func (osDisk) rename(from, to string) error { return os.Rename(from, to) }

// syncFolder makes a rename last through a power failure. Not every system can
// do that for a folder, and the file is whole either way.
func (osDisk) syncFolder(path string) {
	if d, err := os.Open(path); err == nil {
		d.Sync()
		d.Close()
	}
}

const (
	tempEnding    = ".tmp"
	randomLetters = 8
)

// tempName is a new name beside path, hidden where names with a dot are.
func tempName(path string) string {
	return filepath.Join(filepath.Dir(path), "."+filepath.Base(path)+"."+rand.Text()[:randomLetters]+tempEnding)
}

// temps lists what interrupted runs left beside path.
func temps(path string) []string {
	entries, err := os.ReadDir(filepath.Dir(path))
	if err != nil {
		return nil
	}
	var left []string
	for _, e := range entries {
		name, ours := strings.CutPrefix(e.Name(), "."+filepath.Base(path)+".")
		random, whole := strings.CutSuffix(name, tempEnding)
		if ours && whole && len(random) == randomLetters {
			left = append(left, filepath.Join(filepath.Dir(path), e.Name()))
		}
	}
	return left
}
