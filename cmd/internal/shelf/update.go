package shelf

import (
	"bytes"
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
)

// The endings of what stands beside a file that is updated.
const (
	lockEnding   = ".lock"
	BackupEnding = ".bak"
)

// mostTries bounds how often the change is made anew because the file was
// changed by somebody else meanwhile.
const mostTries = 8

// The ways an update fails that are no fault of the disk.
var (
	// ErrBusy is returned when another run holds the lock for too long.
	ErrBusy = errors.New("another run of fencecard is writing it")
	// ErrUnsettled is returned when something else keeps changing the file.
	ErrUnsettled = errors.New("something else keeps changing it")
)

// Update reads a file, has it changed and writes what comes back; a file that
// is not there is read as nil. Change may be called again, with what the file
// holds then, where somebody changed it by hand in between. Where change gives
// an error or the same bytes, nothing is written.
//
// One run at a time gets to the file: the lock is the operating system's, on a
// file beside it, and ends with the process that holds it, so one that was
// left behind by a crash locks nothing. The last version stays as a backup.
//
// An error of the disk is an [fs.PathError] whose path is the file at fault: the
// file itself, its lock or its backup.
func Update(ctx context.Context, path string, change func(old []byte) ([]byte, error)) error {
	return shelf{osDisk{}}.update(ctx, path, change)
}

func (s shelf) update(ctx context.Context, path string, change func(old []byte) ([]byte, error)) error {
	path, unlock, err := locked(ctx, path)
	if err != nil {
		return err
	}
	defer unlock()
	for _, left := range append(temps(path), temps(path+BackupEnding)...) {
		os.Remove(left) // whoever wrote it is gone, or would hold the lock
	}
	for range mostTries {
		old, err := read(path)
		if err != nil {
			return err
		}
		data, err := change(old)
		if err != nil || old != nil && bytes.Equal(old, data) {
			return err
		}
		done, err := s.swap(path, old, data)
		if done || err != nil {
			return err
		}
	}
	return ErrUnsettled
}

// mayUpdate faults a file that is not to be updated, or what stands in the
// place of its lock or its backup.
func mayUpdate(path string) error {
	if err := Ordinary(path); err != nil {
		return err
	}
	for _, ending := range []string{lockEnding, BackupEnding} {
		if err := checkBeside(path, path+ending); err != nil {
			return err
		}
	}
	return writable(path)
}

// swap puts data in the place of old, unless the file no longer holds it.
func (s shelf) swap(path string, old, data []byte) (done bool, err error) {
	temp, err := s.beside(path, path, data)
	if err != nil {
		return false, naming(path, err)
	}
	defer os.Remove(temp) // gone already where all went well
	if old != nil {       // what nobody else may read, nobody may read of the backup
		if err := s.replaceLike(path+BackupEnding, path, old); err != nil {
			return false, naming(path+BackupEnding, err)
		}
	}
	now, err := read(path)
	if err != nil || !bytes.Equal(now, old) || (now == nil) != (old == nil) {
		return false, err
	}
	if err := s.disk.rename(temp, path); err != nil {
		return false, naming(path, err)
	}
	s.disk.syncFolder(filepath.Dir(path))
	return true, nil
}

// read returns what a file holds, nil where it is not there.
func read(path string) ([]byte, error) {
	data, err := os.ReadFile(path)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, nil
	}
	if data == nil && err == nil {
		data = []byte{}
	}
	return data, err
}
