package terminal

import (
	"os"

	"golang.org/x/term"
)

// unattended reports whether nobody and nothing reads what is said or gives an
// answer: no stream is a terminal, a pipe or a file. So desktops start a program by a
// press on it; shells, scripts and other programs always give it one of these.
func unattended(streams ...any) bool {
	for _, stream := range streams {
		f, ok := stream.(*os.File)
		if !ok || term.IsTerminal(int(f.Fd())) {
			return false
		}
		info, err := f.Stat()
		if err != nil || info.Mode()&(os.ModeCharDevice|os.ModeSocket) == 0 {
			return false
		}
	}
	return true
}
