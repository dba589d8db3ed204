package shopfile

import "io/fs"

// Missing is an error of what opens shop files: there is none of that name.
type Missing struct {
	Near string // the path that could be meant; "" for none
}

// Error says it as the file system does.
func (n *Missing) Error() string { return fs.ErrNotExist.Error() }

// Unwrap makes it one of [fs.ErrNotExist].
func (n *Missing) Unwrap() error { return fs.ErrNotExist }
