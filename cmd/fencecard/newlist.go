package main

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery"
	"fencecard/joinery/piecelist"
	"fencecard/joinery/planfile"
)

// listOptions are the flags of new for a list of pieces.
type listOptions struct {
	from     string
	against  string
	columns  []string
	unit     string
	defaults bool
}

func (o *listOptions) add(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVar(&o.from, "from", "", "make the plan of the pieces in this `LIST`, a CSV file; - for standard input")
	f.StringVar(&o.against, "against", "", "with --from: tell how the list differs from this `PLAN`, and write nothing")
	f.StringArrayVar(&o.columns, "column", nil, "what the column with this head holds, as `FIELD=HEAD`; may be given again")
	f.StringVar(&o.unit, "unit", "", "the unit of the list's bare numbers, in or mm")
	f.BoolVar(&o.defaults, "defaults", false, "take the default wherever the list leaves something open")
	choices(cmd, "unit", "in", "mm")
}

// reading turns the flags into what the reader of lists wants.
func (o listOptions) reading() (piecelist.Options, error) {
	reading := piecelist.Options{Defaults: o.defaults, Answers: map[string]string{}}
	if o.unit != "" {
		unit, err := unitNamed(o.unit)
		if err != nil {
			return reading, err
		}
		reading.Unit = piecelist.Inches
		if unit == joinery.Millimetres {
			reading.Unit = piecelist.Millimetres
		}
	}
	for _, text := range o.columns {
		word, head, ok := strings.Cut(text, "=")
		field, known := piecelist.ParseField(word)
		if !ok || !known || strings.TrimSpace(head) == "" {
			return reading, usageError{fmt.Errorf("--column says what a column holds and its head, as in --column length=L, not %q; it may hold %s",
				text, joinery.List(piecelist.FieldNames(), "or"))}
		}
		reading.Columns = append(reading.Columns, piecelist.Column{Field: field, Head: strings.TrimSpace(head)})
	}
	return reading, nil
}

// open reads the list's bytes, and returns its name for messages.
func (a *app) openList(o listOptions) (name string, data []byte, reading piecelist.Options, err error) {
	if reading, err = o.reading(); err != nil {
		return "", nil, reading, err
	}
	if data, err = a.readFile(o.from); err != nil {
		return "", nil, reading, err
	}
	if name = o.from; name == "-" {
		name = "stdin"
	}
	return name, data, reading, nil
}

// newFromList writes the plan of a list, once all is asked that the list leaves
// open.
func (a *app) newFromList(to string, o newOptions) error {
	if _, err := os.Stat(to); to != "-" && !o.force && !errors.Is(err, fs.ErrNotExist) {
		// Said before anything is asked.
		return fmt.Errorf("%s is already there; use --force to write over it, or name another file", to)
	}
	name, data, reading, err := a.openList(o.list)
	if err != nil {
		return err
	}
	var list *piecelist.List
	err = a.settle(o.list, reading, func() (questions []piecelist.Question, err error) {
		list, questions, err = piecelist.Read(name, data, reading)
		return questions, err
	})
	if err != nil {
		return err
	}
	text := list.Plan()
	plan, err := planfile.Read(to, text, nil)
	if err != nil {
		return fmt.Errorf("%s makes a plan that cannot be read, so it is not written:\n%w", name, err)
	}
	for _, left := range list.Left {
		fmt.Fprintf(a.err, "%s: left out: %s\n", name, left)
	}
	if to == "-" {
		_, err := a.out.Write(text)
		return err
	}
	if err := a.writeFile(to, text, o.force); err != nil {
		return err
	}
	return a.wrote("%s: a plan of %s from %s of %s\nNext: add the joints, then fencecard cards %[1]s\n",
		to, numbered(pieces(plan), "piece"), numbered(len(list.Pieces), "row"), name)
}

// pieces counts the pieces of wood of a plan.
func pieces(plan *joinery.Plan) int {
	n := 0
	for i := range plan.Pieces {
		n += plan.Pieces[i].Count
	}
	return n
}

func numbered(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// compareList tells how a list differs from a plan.
func (a *app) compareList(o listOptions) error {
	name, data, reading, err := a.openList(o)
	if err != nil {
		return err
	}
	plan, err := a.readPlan([]string{o.against})
	if err != nil {
		return err
	}
	var differences []piecelist.Difference
	err = a.settle(o, reading, func() (questions []piecelist.Question, err error) {
		differences, questions, err = piecelist.Compare(name, data, reading, plan)
		return questions, err
	})
	if err != nil {
		return err
	}
	if len(differences) == 0 {
		return a.tell("%s and %s agree\n", name, o.against)
	}
	for _, d := range differences {
		at := ""
		if d.Row > 0 {
			at = fmt.Sprintf("row %d: ", d.Row)
		}
		behind := ""
		if d.Place.Known() {
			behind = " (" + d.Place.String() + ")"
		}
		if err := a.tell("%s%s%s\n", at, d.Says, behind); err != nil {
			return err
		}
	}
	return nil
}
