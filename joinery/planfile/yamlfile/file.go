// Package yamlfile reads a text of YAML as keys and values, each with its place,
// and collects what is wrong with it in a maker's words: slips of indentation and
// quotes, keys that are unknown, missing or there twice, texts that are no length,
// no side, no number. What a key means is said by whoever asks for it.
// [ReadWritten] tells which bytes each value takes, for who changes them.
package yamlfile

import (
	"errors"
	"fmt"

	"fencecard/joinery/measure"
	"fencecard/joinery/plantext"

	"go.yaml.in/yaml/v4"
)

// MostFaults is how many faults are collected from one file; a file with more
// is of another format, or is meant to do harm.
const MostFaults = 100

// File reads one file: its text, and the faults found so far.
type File struct {
	Name   string
	Text   *plantext.Text
	Unit   measure.Unit
	Scale  measure.Scale // for lengths in messages
	Faults plantext.Faults
	Full   bool // more faults than are kept
}

// New reads a file in that unit.
func New(name string, unit measure.Unit, scale measure.Scale) *File {
	return &File{Name: name, Unit: unit, Scale: scale, Text: plantext.NewText(name, "")}
}

// Position is a place in the file, for what is kept of thousands of values. It
// is counted from 1.
type Position struct{ line, column int32 }

// PositionOf is where a node begins.
func PositionOf(n *yaml.Node) Position { return Position{int32(n.Line), int32(n.Column)} }

// Where returns the place of a position.
func (r *File) Where(p Position) plantext.Place { return r.at(int(p.line), int(p.column)) }

// Place returns where a node was written.
func (r *File) Place(n *yaml.Node) plantext.Place { return r.at(n.Line, n.Column) }

// at returns a place by line and column, both from 1.
func (r *File) at(line, column int) plantext.Place { return r.Text.Place(line, column) }

// line is a line counted from 1, or "" past the last.
func (r *File) line(n int) string { return r.Text.Line(n) }

// Fault adds a fault at a node.
func (r *File) Fault(n *yaml.Node, remedy, problem string, args ...any) {
	r.FaultAt(PositionOf(n), remedy, problem, args...)
}

// FaultAt adds a fault at a position.
func (r *File) FaultAt(p Position, remedy, problem string, args ...any) {
	r.Add(plantext.Fault{Place: r.Where(p), Problem: fmt.Sprintf(problem, args...), Remedy: remedy})
}

// Add keeps a fault unless there are too many.
func (r *File) Add(f plantext.Fault) {
	if len(r.Faults) == MostFaults {
		r.Full = true
		return
	}
	r.Faults.Add(f)
}

// Err returns every fault found, as an error.
func (r *File) Err() error {
	if r.Full {
		r.Faults.Add(plantext.Fault{
			Place:   plantext.Place{File: r.Name, Line: r.Text.Count() + 1},
			Problem: fmt.Sprintf("there are more than %d faults; only these are shown", MostFaults),
			Remedy:  "mend them and run it again",
		})
	}
	return r.Faults.Err()
}

// Because adds what another package found wrong, at a node.
func (r *File) Because(n *yaml.Node, err error) {
	var f plantext.Fault
	if !errors.As(err, &f) {
		f.Problem = err.Error()
	}
	f.Place = r.Place(n)
	r.Add(f)
}

// BeginPlan is the remedy for what is no plan at all.
const BeginPlan = "fencecard new FILE writes a plan to begin with"
