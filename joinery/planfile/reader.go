package planfile

import (
	"fmt"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// mostFaults is how many faults are collected from one file; a file with more
// is of another format, or is meant to do harm.
const mostFaults = 100

// reader reads one file: its lines, and the faults found so far.
type reader struct {
	name   string
	lines  []string
	unit   joinery.Unit
	scale  joinery.Scale // for lengths in messages
	faults joinery.Faults
	full   bool // more faults than are kept
}

// place returns where a node was written.
func (r *reader) place(n *yaml.Node) joinery.Place { return r.at(n.Line, n.Column) }

// at returns a place by line and column, both from 1.
func (r *reader) at(line, column int) joinery.Place {
	p := joinery.Place{File: r.name, Line: line, Column: column}
	p.Source = r.line(line)
	return p
}

// line is a line counted from 1, or "" past the last.
func (r *reader) line(n int) string {
	if n < 1 || n > len(r.lines) {
		return ""
	}
	return r.lines[n-1]
}

// fault adds a fault at a node.
func (r *reader) fault(n *yaml.Node, remedy, problem string, args ...any) {
	r.add(joinery.Fault{Place: r.place(n), Problem: fmt.Sprintf(problem, args...), Remedy: remedy})
}

// add keeps a fault unless there are too many.
func (r *reader) add(f joinery.Fault) {
	if len(r.faults) < mostFaults {
		r.faults.Add(f)
		return
	}
	r.full = true
}

// err returns every fault found, as an error.
func (r *reader) err() error {
	if r.full {
		r.faults.Add(joinery.Fault{
			Place:   joinery.Place{File: r.name, Line: len(r.lines) + 1},
			Problem: fmt.Sprintf("there are more than %d faults; only these are shown", mostFaults),
			Remedy:  "mend them and run it again",
		})
	}
	return r.faults.Err()
}
