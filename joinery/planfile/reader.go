package planfile

import (
	"errors"
	"fmt"

	"fencecard/joinery"

	"go.yaml.in/yaml/v4"
)

// mostFaults is how many faults are collected from one file; a file with more
// is of another format, or is meant to do harm.
const mostFaults = 100

// reader reads one file: its text, and the faults found so far.
type reader struct {
	name   string
	text   *joinery.Text
	unit   joinery.Unit
	scale  joinery.Scale // for lengths in messages
	faults joinery.Faults
	full   bool // more faults than are kept
}

// newReader reads a file in that unit.
func newReader(name string, unit joinery.Unit, scale joinery.Scale) *reader {
	return &reader{name: name, unit: unit, scale: scale, text: joinery.NewText(name, "")}
}

// position is a place in the file, for what is kept of thousands of values. It
// is counted from 1.
type position struct{ line, column int32 }

func positionOf(n *yaml.Node) position { return position{int32(n.Line), int32(n.Column)} }

// where returns the place of a position.
func (r *reader) where(p position) joinery.Place { return r.at(int(p.line), int(p.column)) }

// place returns where a node was written.
func (r *reader) place(n *yaml.Node) joinery.Place { return r.at(n.Line, n.Column) }

// at returns a place by line and column, both from 1.
func (r *reader) at(line, column int) joinery.Place { return r.text.Place(line, column) }

// line is a line counted from 1, or "" past the last.
func (r *reader) line(n int) string { return r.text.Line(n) }

// fault adds a fault at a node.
func (r *reader) fault(n *yaml.Node, remedy, problem string, args ...any) {
	r.faultAt(positionOf(n), remedy, problem, args...)
}

// faultAt adds a fault at a position.
func (r *reader) faultAt(p position, remedy, problem string, args ...any) {
	r.add(joinery.Fault{Place: r.where(p), Problem: fmt.Sprintf(problem, args...), Remedy: remedy})
}

// add keeps a fault unless there are too many.
func (r *reader) add(f joinery.Fault) {
	if len(r.faults) == mostFaults {
		r.full = true
		return
	}
	r.faults.Add(f)
}

// err returns every fault found, as an error.
func (r *reader) err() error {
	if r.full {
		r.faults.Add(joinery.Fault{
			Place:   joinery.Place{File: r.name, Line: r.text.Count() + 1},
			Problem: fmt.Sprintf("there are more than %d faults; only these are shown", mostFaults),
			Remedy:  "mend them and run it again",
		})
	}
	return r.faults.Err()
}

// because adds what another package found wrong, at a node.
func (r *reader) because(n *yaml.Node, err error) {
	var f joinery.Fault
	if !errors.As(err, &f) {
		f.Problem = err.Error()
	}
	f.Place = r.place(n)
	r.add(f)
}

// beginPlan is the remedy for what is no plan at all.
const beginPlan = "fencecard new FILE writes a plan to begin with"
