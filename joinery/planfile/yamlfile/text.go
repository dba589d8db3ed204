package yamlfile

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"fencecard/joinery/plantext"
)

// mostBytes is the largest file read.
const mostBytes = 8 << 20

// clean turns the file's bytes into clean lines for the YAML library, which
// tells no place for bad bytes and miscounts lines that end in CR LF.
func (r *File) clean(data []byte, what string) bool {
	refuse := func(problem, remedy string) bool {
		r.Add(plantext.Fault{Place: plantext.Place{File: r.Name}, Problem: what + " " + problem, Remedy: remedy})
		return false
	}
	switch {
	case len(data) > mostBytes:
		return refuse(fmt.Sprintf("is larger than %d MB", mostBytes>>20), tooLarge)
	case plantext.UTF16(data):
		return refuse("is saved as UTF-16", "save it again as plain text in UTF-8")
	case noText(data):
		return refuse("is not a text file", "check that this is the file you mean; write it in a plain text editor")
	}
	text := strings.TrimPrefix(string(data), "\ufeff")
	if strings.Contains(text, "\r") {
		text = strings.NewReplacer("\r\n", "\n", "\r", "\n").Replace(text)
	}
	r.Text = plantext.NewText(r.Name, text)
	before := len(r.Faults)
	r.checkLetters()
	r.checkTabs()
	r.checkValues(what)
	return len(r.Faults) == before
}

// noText reports whether the bytes are a picture, a page or a program: one in
// fifty of the first is a control character, and a text has a few at the most.
func noText(data []byte) bool {
	const looked, few, oneIn = 4096, 8, 50
	data = data[:min(len(data), looked)]
	odd := 0
	for _, b := range data {
		if b < ' ' && b != '\t' && b != '\n' && b != '\r' {
			odd++
		}
	}
	return odd > few && odd*oneIn > len(data)
}

// checkLetters faults the first letter that is not UTF-8 and the first that
// cannot be printed.
func (r *File) checkLetters() {
	broken, unprintable := false, false
	for n, line := range r.Text.Lines() {
		for offset, c := range line {
			switch {
			case c == utf8.RuneError && !broken && !strings.HasPrefix(line[offset:], "\ufffd"):
				broken = true
				r.Add(plantext.Fault{
					Place:   r.at(n, column(line, offset)),
					Problem: fmt.Sprintf("this letter is not UTF-8%s", latin(line[offset])),
					Remedy:  "save the file again as plain text in UTF-8; the editor has it set to Latin-1 or Windows-1252",
				})
			case control(c) && !unprintable:
				unprintable = true
				r.Add(plantext.Fault{
					Place:   r.at(n, column(line, offset)),
					Problem: fmt.Sprintf("there is an invisible character here (code %04X)", c),
					Remedy:  "delete it and type the word again; if the whole file looks like this, it is not a text file",
				})
			}
		}
	}
}

// column counts characters up to a byte of the line, from 1.
func column(line string, offset int) int { return utf8.RuneCountInString(line[:offset]) + 1 }

// latin says which letter the byte would be in Latin-1.
func latin(b byte) string {
	if b < 0xa1 {
		return ""
	}
	return fmt.Sprintf(" (%c in Latin-1)", rune(b))
}

// control reports whether a character moves the cursor or breaks a line in
// some readers and not in others.
func control(c rune) bool {
	return c < ' ' && c != '\t' || c >= 0x7f && c < 0xa0 || c == '\u2028' || c == '\u2029' || c == '\ufeff' || c == '\ufffe' || c == '\uffff'
}

// blanks are a tab and the spaces that are no plain space.
const blanks = "\t\u00a0\u2002\u2003\u2007\u2009\u202f\u3000"

// checkTabs faults the first line that begins with a tab or a space of another
// kind; YAML allows only plain spaces there.
func (r *File) checkTabs() {
	first, more := 0, 0
	for n, line := range r.Text.Lines() {
		word := strings.TrimLeft(line, " "+blanks)
		indent := line[:len(line)-len(word)]
		if word == "" || word[0] == '#' || !strings.ContainsAny(indent, blanks) {
			continue
		}
		if first == 0 {
			first = n
		} else {
			more++
		}
	}
	if first == 0 {
		return
	}
	line := r.line(first)
	at := strings.IndexAny(line, blanks)
	problem := "this line begins with a tab"
	if line[at] != '\t' {
		problem = "this line begins with a space of another kind, as copying from a web page brings"
	}
	if more > 0 {
		problem += fmt.Sprintf(", and so do others (%d more)", more)
	}
	r.Add(plantext.Fault{
		Place:   r.at(first, column(line, at)),
		Problem: problem,
		Remedy:  "begin lines with plain spaces only, two for each step inward",
	})
}
