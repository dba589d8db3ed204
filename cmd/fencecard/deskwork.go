package main

import (
	"path/filepath"

	"fencecard/cmd/internal/desk"
)

// desk is what the plan's screen works on: the same files, read in the same way,
// as the bench page beside it.
func (w *benchWork) desk() desk.Work {
	return desk.Work{
		Path: w.file,
		Make: w.deck,
		Open: func(path string) ([]byte, error) { return w.app.Silently().ShopIn(filepath.Dir(w.file))(path) },
	}
}
