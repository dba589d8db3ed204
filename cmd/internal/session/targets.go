package session

import (
	"fmt"
	"maps"
	"path/filepath"
	"slices"
	"strings"

	"fencecard/cmd/internal/shelf"
	"fencecard/joinery/plantext"
	"fencecard/output/paper"
)

// Target is a file to write and the form it is written in. No file is standard
// output, or for pages, on paper or for a screen, the file named after the plan.
type Target struct{ File, Format string }

// endings tell the form of a file by its name.
var endings = map[string]string{".pdf": "pdf", ".json": "json", ".txt": "text", ".svg": "svg", ".html": "html", ".htm": "html"}

// TargetsOf gives every file its form: that of its ending, else the one of
// --format. Chosen tells that --format was given; else an ending that is not known is
// refused, because a file that says .csv would hold something else.
func TargetsOf(files []string, format string, chosen bool) ([]Target, error) {
	if len(files) == 0 {
		return []Target{{"", format}}, nil
	}
	var all []Target
	for _, file := range files {
		t := Target{file, format}
		ending := filepath.Ext(file)
		if by, known := endings[strings.ToLower(ending)]; known {
			t.Format = by
		} else if ending != "" && !chosen && file != "-" {
			return nil, Usage(fmt.Errorf("--out %s: nothing is written as %s; end it in %s, or say by --format what it is to hold",
				plantext.Brief(file, 60), plantext.Brief(ending, 20), plantext.List(slices.Sorted(maps.Keys(endings)), "or")))
		}
		if t.Format != format && chosen && len(files) == 1 {
			return nil, Usage(fmt.Errorf("--out %s is %s by its ending, and --format says %s: leave --format out, or give the file another ending",
				plantext.Brief(file, 60), t.Format, format))
		}
		if slices.ContainsFunc(all, func(other Target) bool { return other.File == file }) {
			return nil, Usage(fmt.Errorf("--out %s is given twice", plantext.Brief(file, 60)))
		}
		all = append(all, t)
	}
	return all, nil
}

// Stamped tells that its form has a name of its own and a stamp.
func (t Target) Stamped() bool { return t.Format == "pdf" || t.Format == "html" }

// OnScreen tells that it goes to standard output.
func (t Target) OnScreen() bool { return t.File == "-" || t.File == "" && !t.Stamped() }

// Write writes what was printed for something, such as a plan. A PDF or a page for
// a screen that was printed for the same and that nobody changed gives way to it; any other file
// only where forced.
func (s *Session) Write(t Target, data []byte, of string, force bool) error {
	if t.OnScreen() {
		_, err := s.Out.Write(data)
		return err
	}
	if t.Stamped() {
		data = paper.Stamp(data, of)
		force = force || s.isOurs(t.File, of)
	}
	return s.WriteFile(t.File, data, force)
}

// isOurs reports whether a file was printed for the same, and is as it was printed.
func (s *Session) isOurs(file, of string) bool {
	if shelf.Ordinary(file) != nil {
		return false // a pipe or a terminal would be waited for
	}
	there, err := s.Silently().ReadNamed(file)
	return err == nil && paper.Stamped(there, of)
}
