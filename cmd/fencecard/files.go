package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"

	"fencecard/cmd/internal/shelf"
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

// cause is what went wrong with a file, without the file's name: the error may
// name another one that stood in for it while it was written.
func cause(err error) error {
	var path *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &path):
		return path.Err
	case errors.As(err, &link):
		return link.Err
	}
	return err
}

// writeFile puts data into a file in one step, so that there is the old file or
// the new one and never a half. It does not write over a file unless forced.
func writeFile(name string, data []byte, force bool) error {
	write := shelf.New
	if force {
		write = shelf.Replace
	}
	err := write(name, data)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("%s is already there; use --force to write over it, or --out for another name", name)
	case err != nil:
		return fmt.Errorf("%s: %w", name, cause(err))
	}
	return nil
}
