package session

import (
	"fmt"
	"path/filepath"
	"slices"

	"fencecard/cmd/internal/shelf"
	"fencecard/joinery/plantext"
	"fencecard/output/paper"
)

// Target is a file to write and the form it is written in. No file is standard
// output, or where the format is stamped the file named after the plan.
type Target struct {
	File string
	*Format
}

// Targets gives every file its format: that of its ending, else the one of
// --format. Chosen tells that --format was given; else an ending that is not known is
// refused, because a file that says .csv would hold something else.
func (fs Formats[W]) Targets(files []string, format string, chosen bool) ([]Target, error) {
	named, err := fs.Named(format)
	if err != nil {
		return nil, err
	}
	if len(files) == 0 {
		return []Target{{"", named.Format}}, nil
	}
	var all []Target
	for _, file := range files {
		t := Target{file, named.Format}
		ending := filepath.Ext(file)
		if by := fs.ending(ending); by != nil {
			t.Format = by
		} else if ending != "" && !chosen && file != "-" {
			return nil, Usage(fmt.Errorf("--out %s: nothing here is written as %s; end it in %s, or say by --format what it is to hold",
				plantext.Brief(file, 60), plantext.Brief(ending, 20), plantext.List(fs.endings(), "or")))
		}
		if t.Format != named.Format && chosen && len(files) == 1 {
			return nil, Usage(fmt.Errorf("--out %s is %s by its ending, and --format says %s: leave --format out, or give the file another ending",
				plantext.Brief(file, 60), t.Name, format))
		}
		if slices.ContainsFunc(all, func(other Target) bool { return other.File == file }) {
			return nil, Usage(fmt.Errorf("--out %s is given twice", plantext.Brief(file, 60)))
		}
		all = append(all, t)
	}
	return all, nil
}

// OnScreen tells that it goes to standard output.
func (t Target) OnScreen() bool { return t.File == "-" || t.File == "" && !t.Stamped }

// Write writes what was printed for something, such as a plan. A PDF or a page for
// a screen that was printed for the same and that nobody changed gives way to it; any other file
// only where forced.
func (s *Session) Write(t Target, data []byte, of string, force bool) error {
	if t.OnScreen() {
		_, err := s.Out.Write(data)
		return err
	}
	if t.Stamped {
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
