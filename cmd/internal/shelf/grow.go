package shelf

import (
	"context"
	"os"
	"path/filepath"
)

// Grow opens a file to which lines are only ever added, for one run at a time:
// the lock is the one of [Update]. The file is made where it is not there. What
// add wrote is synced before Grow returns nil; where add fails after it wrote,
// what it wrote is taken off again.
func Grow(ctx context.Context, path string, add func(f *os.File) error) error {
	path, unlock, err := locked(ctx, path)
	if err != nil {
		return err
	}
	defer unlock()
	f, err := os.OpenFile(path, os.O_RDWR|os.O_CREATE|os.O_APPEND, 0o600)
	if err != nil {
		return err
	}
	defer f.Close()
	before, err := f.Stat()
	if err != nil {
		return err
	}
	if err := add(f); err != nil {
		if now, e := f.Stat(); e == nil && now.Size() > before.Size() {
			_ = f.Truncate(before.Size()) // else the next one mends it
		}
		return err
	}
	if err := f.Sync(); err != nil {
		return err
	}
	if before.Size() == 0 {
		osDisk{}.syncFolder(filepath.Dir(path))
	}
	return nil
}
