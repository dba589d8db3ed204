package terminal

import (
	"io"
	"strings"

	"fencecard/joinery/plantext"
)

// Watched is standard output that remembers its first error: the library that
// writes the help drops it.
type Watched struct {
	To  io.Writer
	Err error
}

// Write keeps the first error.
func (w *Watched) Write(data []byte) (int, error) {
	n, err := w.To.Write(data)
	if w.Err == nil {
		w.Err = err
	}
	return n, err
}

// harmless is standard error without what moves a terminal's cursor or turns
// the direction of writing: names of files and unknown flags are quoted there.
type harmless struct{ to io.Writer }

// Write writes what can be printed.
func (h harmless) Write(data []byte) (int, error) {
	lines := strings.Split(string(data), "\n")
	for i := range lines {
		lines[i] = plantext.Printable(lines[i])
	}
	if _, err := io.WriteString(h.to, strings.Join(lines, "\n")); err != nil {
		return 0, err
	}
	return len(data), nil
}

// Messages is standard error as it is written to: harmless, and folded as wide as
// the terminal that it goes to. The width is 0 where it goes to none.
func Messages(to io.Writer) (safe io.Writer, width int) {
	width = Width(to)
	return harmless{folded{to, width}}, width
}
