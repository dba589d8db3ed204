package terminal

import (
	"fmt"
	"io"
	"runtime"
	"strings"

	"rsc.io/qr"
)

// TellLetting says by which address the next device is let in, as text and as a code to
// scan: on screen, the terminal of the messages as it is, or where that is nil among them.
func TellLetting(messages, screen io.Writer, address string) {
	fmt.Fprintf(messages, "the next device is let in, once, at\n    %s\n", address)
	code, err := qr.Encode(address, qr.L)
	if err != nil {
		return // the address is there as text
	}
	drawn := halfBlocks(code.Size, code.Black)
	if screen == nil || runtime.GOOS == "windows" {
		fmt.Fprint(messages, indented(drawn))
		return
	}
	// Black on white, whatever the terminal's colours are.
	for line := range strings.Lines(drawn) {
		fmt.Fprintf(screen, "    \x1b[97;40m%s\x1b[0m\n", strings.TrimSuffix(line, "\n"))
	}
}

func indented(lines string) string {
	return "    " + strings.ReplaceAll(strings.TrimSuffix(lines, "\n"), "\n", "\n    ") + "\n"
}

// quiet is the white that a code needs around it: ISO/IEC 18004 says four modules,
// readers of today are content with two, and a terminal has few lines.
const quiet = 2

// halfBlocks draws a code of so many modules, two of them above each other in a
// character. What is light is drawn, and what is dark is left: most terminals are
// dark.
func halfBlocks(size int, dark func(x, y int) bool) string {
	var b strings.Builder
	for y := -quiet; y < size+quiet; y += 2 {
		for x := -quiet; x < size+quiet; x++ {
			upper, lower := !dark(x, y), !dark(x, y+1)
			if y+1 >= size+quiet {
				lower = false // below the last line there is nothing
			}
			switch {
			case upper && lower:
				b.WriteString("█")
			case upper:
				b.WriteString("▀")
			case lower:
				b.WriteString("▄")
			default:
				b.WriteString(" ")
			}
		}
		b.WriteString("\n")
	}
	return b.String()
}
