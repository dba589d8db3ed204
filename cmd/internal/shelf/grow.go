package shelf

import (
	"context"
	"io"
	"io/fs"
	"path/filepath"
)

// Growing is a file to which lines are only ever added, while they are.
type Growing interface {
	io.Writer
	io.ReaderAt
	Stat() (fs.FileInfo, error)
}

// private are the rights of what says who did what when: nobody else reads it.
const private fs.FileMode = 0o600

// Grow opens a file to which lines are only ever added, for one run at a time:
// the lock is the one of [Update]. The file is made where it is not there, for its
// owner alone. What add wrote is synced before Grow returns nil; where add or that
// fails, what was written is taken off again, lest it come to be taken for stored.
func Grow(ctx context.Context, path string, add func(f Growing) error) error {
	return shelf{osDisk{}}.grow(ctx, path, add)
}

func (s shelf) grow(ctx context.Context, path string, add func(f Growing) error) error {
	path, unlock, err := locked(ctx, path)
	if err != nil {
		return err
	}
	defer unlock()
	f, err := s.disk.grow(path, private)
	if err != nil {
		return err
	}
	defer f.Close()
	before, err := f.Stat()
	if err != nil {
		return err
	}
	err = add(f)
	if err == nil {
		err = f.Sync()
	}
	if err != nil {
		if now, e := f.Stat(); e == nil && now.Size() > before.Size() {
			_ = f.Truncate(before.Size()) // else the next one mends it
		}
		return err
	}
	if before.Size() == 0 {
		s.disk.syncFolder(filepath.Dir(path))
	}
	return nil
}
