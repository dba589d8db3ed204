package shelf

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// ErrNoFile is returned for a folder, a pipe and the like.
var ErrNoFile = errors.New("this is no ordinary file")

// Ordinary returns nil for an ordinary file and where none is yet, else an
// error that names the path: [ErrNoFile], or why it cannot be known. A pipe is
// not opened to find out, because that may wait without an end.
func Ordinary(path string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return err
	case !info.Mode().IsRegular():
		return &fs.PathError{Op: "write", Path: path, Err: ErrNoFile}
	}
	return nil
}

// writable returns an error for a file that its owner has protected. A rename
// asks for the rights of the folder alone, and would replace it all the same.
func writable(path string) error {
	info, err := os.Stat(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	const anyoneWrites = 0o222
	if err == nil && info.Mode().Perm()&anyoneWrites == 0 { // root may open it
		err = &fs.PathError{Op: "write", Path: path, Err: fs.ErrPermission}
	}
	if err != nil {
		return err
	}
	f, err := os.OpenFile(path, os.O_WRONLY, 0)
	if err != nil {
		return err
	}
	return f.Close()
}

// mostLinks bounds a chain of links; a circle of them has no end.
const mostLinks = 40

// target follows links, so that the file behind one is replaced and not the
// link: a book may be linked into a folder under version control. The file
// behind the last link need not be there yet.
func target(path string) string {
	for range mostLinks {
		if real, err := filepath.EvalSymlinks(path); err == nil {
			return real
		}
		to, err := os.Readlink(path)
		if err != nil {
			return path
		}
		if !filepath.IsAbs(to) {
			folder, err := filepath.EvalSymlinks(filepath.Dir(path))
			if err != nil {
				return path
			}
			to = filepath.Join(folder, to)
		}
		path = to
	}
	return path
}

// checkBeside faults what stands next to an updated file and is no ordinary
// file, or is the updated file itself by another name.
func checkBeside(path, other string) error {
	if err := Ordinary(other); err != nil {
		return err
	}
	one, err := os.Stat(path)
	if err != nil {
		return nil // not there yet, so nothing is it
	}
	if two, err := os.Stat(other); err == nil && os.SameFile(one, two) {
		return &fs.PathError{Op: "write", Path: other, Err: errors.New("this is " + filepath.Base(path) + " by another name")}
	}
	return nil
}

// naming returns an error of a file under the name of the one it stood in for.
func naming(path string, err error) error {
	if err == nil {
		return nil
	}
	var named *fs.PathError
	var link *os.LinkError
	switch {
	case errors.As(err, &named):
		err = named.Err
	case errors.As(err, &link):
		err = link.Err
	}
	return &fs.PathError{Op: "write", Path: path, Err: err}
}
