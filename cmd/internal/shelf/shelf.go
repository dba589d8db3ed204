// Package shelf writes files so that nothing is lost: a reader, a crash or a
// full disk finds the old file or the new one, never a third.
//
// A file is written beside its place, synced and renamed. [New] and [Replace]
// do that for a file that one run writes; [Update] does it for a file that is
// read and written again by many, and by hand: it holds a lock, looks whether
// the file was changed in the meantime, and keeps the last version as a backup.
package shelf

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// New writes a file that must not be there yet; where it is, the error is
// [fs.ErrExist].
func New(path string, data []byte) error { return shelf{osDisk{}}.new(path, data) }

// Replace writes a file over one that may be there.
func Replace(path string, data []byte) error { return shelf{osDisk{}}.replace(path, data) }

// shelf is the work of this package on a disk.
type shelf struct{ disk disk }

func (s shelf) new(path string, data []byte) error {
	temp, err := s.beside(path, path, data)
	if err != nil {
		return err
	}
	defer os.Remove(temp)
	// A link, unlike a rename, fails where the name is taken.
	err = s.disk.link(temp, path)
	if err == nil || errors.Is(err, fs.ErrExist) {
		return err
	}
	return s.direct(path, data) // a file system without links
}

// direct writes a file in its place, and removes it on failure.
func (s shelf) direct(path string, data []byte) error {
	f, err := s.disk.create(path, 0o666)
	if err != nil {
		return err
	}
	if err = fill(f, data); err != nil {
		os.Remove(path)
	}
	return err
}

func (s shelf) replace(path string, data []byte) error { return s.replaceLike(path, path, data) }

// replaceLike writes over a file that may be there, with the rights of another.
func (s shelf) replaceLike(path, like string, data []byte) error {
	path = target(path)
	switch err := Ordinary(path); {
	case errors.Is(err, ErrNoFile):
		return os.WriteFile(path, data, 0o666) // a terminal or a pipe stays one
	case err != nil:
		return err
	}
	if err := writable(path); err != nil {
		return err
	}
	temp, err := s.beside(path, like, data)
	if err != nil {
		return err
	}
	if err := s.disk.rename(temp, path); err != nil {
		os.Remove(temp)
		return err
	}
	s.disk.syncFolder(filepath.Dir(path))
	return nil
}

// beside writes data to a new file in the same folder, with the rights of the
// file named like if that is there, and syncs it.
func (s shelf) beside(path, like string, data []byte) (temp string, err error) {
	temp = tempName(path)
	f, err := s.disk.create(temp, 0o666)
	if err != nil {
		return "", err
	}
	if old, e := os.Stat(like); e == nil {
		err = f.Chmod(old.Mode().Perm())
	}
	if err = errors.Join(err, fill(f, data)); err != nil {
		os.Remove(temp)
		return "", err
	}
	return temp, nil
}

// fill writes all of a file, syncs it and closes it.
func fill(f file, data []byte) error {
	_, err := f.Write(data)
	if err == nil {
		err = f.Sync()
	}
	return errors.Join(err, f.Close())
}
