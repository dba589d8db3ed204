package planfile

import "io/fs"

// NoShop is an error of what opens shop files: there is none of that name.
type NoShop struct {
	Near string // the path that could be meant; "" for none
}

// Error says it as the file system does.
func (n *NoShop) Error() string { return fs.ErrNotExist.Error() }

// Unwrap makes it one of [fs.ErrNotExist].
func (n *NoShop) Unwrap() error { return fs.ErrNotExist }
