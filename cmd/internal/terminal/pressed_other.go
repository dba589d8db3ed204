//go:build !windows

package terminal

import "os"

// Pressed reports whether the program was started by a press on its file, and not
// from a terminal or by another program: on a desktop, whose screen it is told of, and
// with nobody at its streams. What runs by the clock has no screen.
func Pressed(streams ...any) bool {
	return (os.Getenv("DISPLAY") != "" || os.Getenv("WAYLAND_DISPLAY") != "") && unattended(streams...)
}
