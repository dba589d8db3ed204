// Package lists makes a plan of a list of pieces, or compares the two, and puts what
// the list leaves open to whoever sits there.
package lists

import (
	"bufio"
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"fencecard/cmd/internal/session"
	"fencecard/joinery/piecelist"
	"fencecard/joinery/plantext"
)

// settle reads a list as often as there is something to ask about it, and keeps
// the answers by the questions' keys. Where nobody may or can be asked, the
// questions are faults, told with all others.
func settle(a *session.Session, mayAsk bool, answers map[string]string, read func() ([]piecelist.Question, error)) error {
	defer session.CollectSooner()()
	lines := bufio.NewReader(a.In)
	for asked := 0; ; asked++ {
		questions, err := read()
		asks := mayAsk && onTerminal(a.In)
		switch {
		case err != nil && asks:
			return err // nothing is asked of a list that must be mended first
		case err != nil || len(questions) > 0 && !asks:
			return everyFault(err, questions)
		case len(questions) == 0:
			return nil
		}
		if asked == 0 {
			fmt.Fprintln(a.Err, "What the list leaves open: Enter takes what stands in brackets, ? tells more.")
		}
		// One at a time: the list is read again with the answer, which may be none.
		answer, err := ask(a.Err, lines, questions[0])
		if err != nil {
			fmt.Fprintln(a.Err)
			return everyFault(nil, questions)
		}
		answers[questions[0].Key] = answer
	}
}

// everyFault joins the faults of a list with what could not be asked.
func everyFault(err error, questions []piecelist.Question) error {
	var all, open plantext.Faults
	errors.As(err, &all)
	if errors.As(piecelist.Faults(questions), &open) {
		all = append(all, open...)
	}
	if all == nil {
		return err
	}
	return all.Err()
}

// ask asks one question, until there is an answer. An empty line takes the
// default, a question mark tells more.
func ask(to io.Writer, lines *bufio.Reader, q piecelist.Question) (string, error) {
	if q.Wrong != "" {
		fmt.Fprintf(to, "  %s\n", q.Wrong)
	}
	offered := ""
	if q.Default != "" {
		offered = "[" + q.Default + "] "
	}
	for {
		if _, err := fmt.Fprintf(to, "%s %s", q.Asks, offered); err != nil {
			return "", err
		}
		line, err := lines.ReadString('\n')
		line = strings.TrimSpace(line)
		switch {
		case line == "?":
			fmt.Fprint(to, "  "+q.Place.String()+"\n"+q.Place.Excerpt())
			if q.Choices != nil {
				fmt.Fprintf(to, "  one of: %s\n", strings.Join(q.Choices, "; "))
			}
			fmt.Fprintf(to, "  or end here (Ctrl-C) and mend the list: %s\n", q.Remedy)
		case line != "":
			return line, nil
		case err != nil:
			return "", err
		case q.Default != "":
			return q.Default, nil
		default:
			fmt.Fprintf(to, "  nothing is taken here unasked: %s; ? tells more\n", wanted(q))
		}
		if err != nil && !errors.Is(err, io.EOF) {
			return "", err
		}
	}
}

// wanted says what would be an answer.
func wanted(q piecelist.Question) string {
	if q.Choices != nil {
		return "type " + plantext.List(q.Choices, "or")
	}
	return "type it, or end here (Ctrl-C) and mend the list: " + q.Remedy
}

// onTerminal reports whether somebody sits there to be asked: input comes from a
// device for characters, and not from the one that is always empty.
func onTerminal(from io.Reader) bool {
	in, isFile := from.(*os.File)
	if !isFile {
		return false
	}
	info, err := in.Stat()
	if err != nil || info.Mode()&os.ModeCharDevice == 0 {
		return false
	}
	null, err := os.Stat(os.DevNull)
	return err != nil || !os.SameFile(info, null)
}
