package main

import "github.com/inconshreveable/mousetrap"

// pressed reports whether the program was started by a press on its file, and not
// from a terminal or by another program.
func pressed(streams) bool { return mousetrap.StartedByExplorer() }
