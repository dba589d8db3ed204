package terminal

import "github.com/inconshreveable/mousetrap"

// Pressed reports whether the program was started by a press on its file, and not
// from a terminal or by another program.
func Pressed(...any) bool { return mousetrap.StartedByExplorer() }
