package session

import (
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"runtime/debug"

	"fencecard/cmd/internal/shelf"
)

// ReadFile reads a file named on the command line; "-" is standard input.
func (s *Session) ReadFile(name string) ([]byte, error) {
	if name == "-" {
		return readAll(s.In, "standard input")
	}
	return s.ReadNamed(name)
}

// ReadNamed reads a file by its name, whatever that is.
func (s *Session) ReadNamed(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, missing(name, err)
	}
	defer f.Close()
	if err := s.source(f); err != nil {
		return nil, Plainly(err)
	}
	return readAll(f, name)
}

// source remembers a file that is read, so that it is not written over. A
// terminal or a pipe may be both.
func (s *Session) source(f *os.File) error {
	info, err := f.Stat()
	if err == nil && info.Mode().IsRegular() {
		s.sources = append(s.sources, info)
	}
	return err
}

// mostRead is more than any plan, deck or book comes to: a deck of 30,000 runs.
const mostRead = 64 << 20

// readAll reads to the end, but not without one: a name may be that of a
// device.
func readAll(r io.Reader, name string) ([]byte, error) {
	data, err := io.ReadAll(io.LimitReader(r, mostRead+1))
	if len(data) > mostRead {
		return nil, fmt.Errorf("%s is larger than %d MB: is it the file you mean?", name, mostRead>>20)
	}
	return data, Plainly(err)
}

// CollectSooner has the collector run sooner until what it returns is called. A
// value takes far more than its text while it is read; what is no longer needed
// of it goes at once, so that a file of megabytes does not take hundreds.
func CollectSooner() (asBefore func()) {
	before := debug.SetGCPercent(25)
	return func() { debug.SetGCPercent(before) }
}

// Plainly takes the system call's name out of a file error.
func Plainly(err error) error {
	var path *fs.PathError
	if errors.As(err, &path) {
		return fmt.Errorf("%s: %w", path.Path, path.Err)
	}
	return err
}

// Cause is what went wrong with a file, without the file's name: the error may
// name another one that stood in for it while it was written.
func Cause(err error) error {
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

// WriteFile puts data into a file in one step, so that there is the old file or
// the new one and never a half. It does not write over a file unless forced,
// and never over what it was made from, by whatever name or link.
func (s *Session) WriteFile(name string, data []byte, force bool) error {
	if there, err := os.Stat(name); err == nil {
		for _, source := range s.sources {
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
		return fmt.Errorf("%s: %w", name, Cause(err))
	}
	return nil
}
