package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
)

// readFile reads a file named on the command line; "-" is standard input.
func (a *app) readFile(name string) ([]byte, error) {
	if name == "-" {
		return io.ReadAll(a.in)
	}
	data, err := os.ReadFile(name)
	return data, plainly(err)
}

// plainly takes the system call's name out of a file error.
func plainly(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return fmt.Errorf("%s: %w", path.Path, path.Err)
	}
	return err
}

// writeFile puts data into a file in one step: it is written beside, synced
// and renamed, so that there is the old file or the new one and never a half.
// It does not write over a file unless forced.
func writeFile(name string, data []byte, force bool) (err error) {
	temp, err := os.CreateTemp(filepath.Dir(name), "."+filepath.Base(name)+".*")
	if err != nil {
		return plainly(err)
	}
	defer os.Remove(temp.Name())
	_, err = temp.Write(data)
	err = errors.Join(err, temp.Sync(), temp.Chmod(0o644), temp.Close())
	if err != nil {
		return plainly(err)
	}
	if force {
		return plainly(os.Rename(temp.Name(), name))
	}
	// A link, unlike a rename, fails where the name is taken.
	err = os.Link(temp.Name(), name)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is already there; use --force to write over it, or --out for another name", name)
	}
	if err != nil { // a file system without links
		return writeNew(name, data)
	}
	return nil
}

// writeNew writes a file that must not exist yet, and removes it on failure.
func writeNew(name string, data []byte) error {
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o644)
	if errors.Is(err, fs.ErrExist) {
		return fmt.Errorf("%s is already there; use --force to write over it, or --out for another name", name)
	}
	if err != nil {
		return plainly(err)
	}
	_, err = f.Write(data)
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		os.Remove(name)
	}
	return plainly(err)
}
