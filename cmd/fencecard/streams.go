package main

import (
	"fmt"
	"io"
	"strings"

	"fencecard/joinery"
)

// streams are the three standard streams, handed in so that commands never
// touch os.Stdout and its like themselves.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// watched is standard output that remembers its first error: the library that
// writes the help drops it.
type watched struct {
	to  io.Writer
	err error
}

func (w *watched) Write(data []byte) (int, error) {
	n, err := w.to.Write(data)
	if w.err == nil {
		w.err = err
	}
	return n, err
}

// harmless is standard error without what moves a terminal's cursor or turns
// the direction of writing: names of files and unknown flags are quoted there.
type harmless struct{ to io.Writer }

func (h harmless) Write(data []byte) (int, error) {
	lines := strings.Split(string(data), "\n")
	for i := range lines {
		lines[i] = joinery.Printable(lines[i])
	}
	if _, err := io.WriteString(h.to, strings.Join(lines, "\n")); err != nil {
		return 0, err
	}
	return len(data), nil
}

// note says on standard error what is neither a result nor wrong.
func (a *app) note(format string, args ...any) {
	if !a.quiet {
		fmt.Fprintf(a.err, format+"\n", args...)
	}
}

// wrote says that a file was written or changed, unless asked to be quiet.
func (a *app) wrote(format string, args ...any) error {
	if a.quiet {
		return nil
	}
	return a.tell(format, args...)
}

// tell says something on standard output. The names in it come from the
// command line, or from a book of somebody else's.
func (a *app) tell(format string, args ...any) error {
	for i, arg := range args {
		if name, ok := arg.(string); ok {
			args[i] = joinery.Printable(name)
		}
	}
	_, err := fmt.Fprintf(a.out, format, args...)
	return err
}
