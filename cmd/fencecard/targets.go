package main

import (
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"fencecard/cmd/internal/shelf"
	"fencecard/joinery"
	"fencecard/output/paper"
)

// target is a file to write and the form it is written in. No file is standard
// output, or for pages, on paper or for a screen, the file named after the plan.
type target struct{ file, format string }

// endings tell the form of a file by its name.
var endings = map[string]string{".pdf": "pdf", ".json": "json", ".txt": "text", ".svg": "svg", ".html": "html", ".htm": "html"}

// targetsOf gives every file its form: that of its ending, else the one of
// --format. Chosen tells that --format was given.
func targetsOf(files []string, format string, chosen bool) ([]target, error) {
	if len(files) == 0 {
		return []target{{"", format}}, nil
	}
	var all []target
	for _, file := range files {
		t := target{file, format}
		if by, known := endings[strings.ToLower(filepath.Ext(file))]; known {
			t.format = by
		}
		if t.format != format && chosen && len(files) == 1 {
			return nil, usageError{fmt.Errorf("--out %s is %s by its ending, and --format says %s: leave --format out, or give the file another ending",
				joinery.Brief(file, 60), t.format, format)}
		}
		if slices.ContainsFunc(all, func(other target) bool { return other.file == file }) {
			return nil, usageError{fmt.Errorf("--out %s is given twice", joinery.Brief(file, 60))}
		}
		all = append(all, t)
	}
	return all, nil
}

// stamped tells that its form has a name of its own and a stamp.
func (t target) stamped() bool { return t.format == "pdf" || t.format == "html" }

// onScreen tells that it goes to standard output.
func (t target) onScreen() bool { return t.file == "-" || t.file == "" && !t.stamped() }

// write writes what was printed for something, such as a plan. A PDF or a page for
// a screen that was printed for the same and that nobody changed gives way to it; any other file
// only where forced.
func (a *app) write(t target, data []byte, of string, force bool) error {
	if t.onScreen() {
		_, err := a.out.Write(data)
		return err
	}
	if t.stamped() {
		data = paper.Stamp(data, of)
		force = force || a.isOurs(t.file, of)
	}
	return a.writeFile(t.file, data, force)
}

// isOurs reports whether a file was printed for the same, and is as it was printed.
func (a *app) isOurs(file, of string) bool {
	if shelf.Ordinary(file) != nil {
		return false // a pipe or a terminal would be waited for
	}
	there, err := a.silently().readNamed(file)
	return err == nil && paper.Stamped(there, of)
}
