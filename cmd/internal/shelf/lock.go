package shelf

import (
	"context"
	"errors"
	"fmt"
	"io/fs"
	"time"

	"github.com/gofrs/flock"
)

// Patience is how long [Update] waits for other runs; on a busy machine a line of
// them takes its time.
const Patience = 30 * time.Second

// retry is how often it looks.
const retry = 10 * time.Millisecond

// locked is the file that a path means, held for this run alone until unlock is
// called.
func locked(ctx context.Context, path string) (file string, unlock func(), err error) {
	path = target(path)
	if err := mayUpdate(path); err != nil {
		return "", nil, err
	}
	unlock, err = hold(ctx, path+lockEnding)
	if errors.Is(err, fs.ErrNotExist) {
		return "", nil, naming(path, err) // there is no such folder
	}
	return path, unlock, err
}

// hold takes the lock and returns what lets it go.
func hold(ctx context.Context, path string) (unlock func(), err error) {
	waiting, stop := context.WithTimeoutCause(ctx, Patience, ErrBusy)
	defer stop()
	lock := flock.New(path, flock.SetPermissions(0o666))
	_, err = lock.TryLockContext(waiting, retry)
	switch {
	case err != nil && waiting.Err() != nil:
		return nil, fmt.Errorf("%s: %w", path, context.Cause(waiting))
	case err != nil:
		return nil, naming(path, err)
	}
	return func() { lock.Close() }, nil
}
