package main

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime/debug"

	"fencecard/cmd/internal/shelf"
)

// readFile reads a file named on the command line; "-" is standard input.
func (a *app) readFile(name string) ([]byte, error) {
	if name == "-" {
		return readAll(a.in, "standard input")
	}
	return a.readNamed(name)
}

// readNamed reads a file by its name, whatever that is.
func (a *app) readNamed(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, missing(name, err)
	}
	defer f.Close()
	if err := a.source(f); err != nil {
		return nil, plainly(err)
	}
	return readAll(f, name)
}

// source remembers a file that is read, so that it is not written over. A
// terminal or a pipe may be both.
func (a *app) source(f *os.File) error {
	info, err := f.Stat()
	if err == nil && info.Mode().IsRegular() {
		a.sources = append(a.sources, info)
	}
	return err
}

// mostRead is more than any plan, deck or book comes to: a deck of 30,000 cards.
const mostRead = 64 << 20

// readAll reads to the end, but not without one: a name may be that of a
// device.
func readAll(r io.Reader, name string) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, mostRead+1))
	if len(data) > mostRead {
		return nil, fmt.Errorf("%s is larger than %d MB: is it the file you mean?", name, mostRead>>20)
	}
	return data, plainly(err)
}

// collectSooner has the collector run sooner until what it returns is called. A
// value takes far more than its text while it is read; what is no longer needed
// of it goes at once, so that a file of megabytes does not take hundreds.
func collectSooner() (asBefore func()) {
	before := debug.SetGCPercent(25)
	return func() { debug.SetGCPercent(before) }
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
// the new one and never a half. It does not write over a file unless forced,
// and never over what it was made from, by whatever name or link.
func (a *app) writeFile(name string, data []byte, force bool) error {
	if there, err := os.Stat(name); err == nil {
		for _, source := range a.sources {
			if os.SameFile(there, source) {
				return fmt.Errorf("%s is read for this, and writing over it would destroy it; give --out another name", name)
			}
		}
	}
	write := shelf.New
	if force {
		write = shelf.Replace
	}
	err := write(name, data)
	switch {
	case errors.Is(err, fs.ErrExist):
		return fmt.Errorf("%s is already there; use --force to write over it, or name another file", name)
	case err != nil:
		return fmt.Errorf("%s: %w", name, cause(err))
	}
	return nil
}
