// Package terminal is how the program and whoever sits before it meet: messages
// folded to the screen and without what would move its cursor, output that failed,
// an interrupt, a press on the program's file, a browser to look at its pages in, and a
// code to scan for one elsewhere.
package terminal

import (
	"io"
	"os"
	"strings"
	"unicode/utf8"

	"golang.org/x/term"
)

// Width is how many characters a line of a terminal has; 0 for what is
// none.
func Width(w io.Writer) int {
	f, ok := w.(*os.File)
	if !ok || !term.IsTerminal(int(f.Fd())) {
		return 0
	}
	width, _, err := term.GetSize(int(f.Fd()))
	if err != nil || width <= 0 {
		return 80 // it does not say
	}
	return width
}

// folded breaks the lines of messages between words where a terminal would break
// them within one. Lines of a file that a message shows are left as they are:
// they stand four blanks in, and a caret below them points at a column.
type folded struct {
	to    io.Writer
	width int
}

func (f folded) Write(data []byte) (int, error) {
	var b strings.Builder
	for line := range strings.SplitAfterSeq(string(data), "\n") {
		fold(&b, line, f.width)
	}
	if _, err := io.WriteString(f.to, b.String()); err != nil {
		return 0, err
	}
	return len(data), nil
}

// narrowest is the width below which folding helps nobody.
const narrowest = 30

// fold writes one line; what follows its first break stands two blanks further
// in.
func fold(b *strings.Builder, line string, width int) {
	text := strings.TrimLeft(line, " ")
	indent := len(line) - len(text)
	if width < narrowest || indent >= 4 || utf8.RuneCountInString(strings.TrimSuffix(line, "\n")) <= width {
		b.WriteString(line)
		return
	}
	b.WriteString(line[:indent])
	column := indent
	for i, word := range strings.Split(text, " ") {
		wide := utf8.RuneCountInString(strings.TrimSuffix(word, "\n"))
		switch {
		case i == 0:
		case column+1+wide > width:
			b.WriteString("\n" + strings.Repeat(" ", indent+2))
			column = indent + 2
		default:
			b.WriteString(" ")
			column++
		}
		b.WriteString(word)
		column += wide
	}
}
