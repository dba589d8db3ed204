package lists

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/cmd/internal/session"
	"fencecard/joinery"
	"fencecard/joinery/measure"
	"fencecard/joinery/piecelist"
	"fencecard/joinery/planfile"
	"fencecard/joinery/plantext"
)

// Options are the flags of new for a list of pieces.
type Options struct {
	From     string
	Against  string
	columns  []string
	unit     string
	defaults bool
}

// Add adds them to a command.
func (o *Options) Add(cmd *cobra.Command) {
	f := cmd.Flags()
	f.StringVar(&o.From, "from", "", "make the plan of the pieces in this `LIST`, a CSV file; - for standard input")
	f.StringVar(&o.Against, "against", "", "with --from: tell how the list differs from this `PLAN`, and write nothing")
	f.StringArrayVar(&o.columns, "column", nil, "what the column with this head holds, as `FIELD=HEAD`; may be given again")
	f.StringVar(&o.unit, "unit", "", "the `UNIT` of the list's bare numbers, in or mm")
	f.BoolVar(&o.defaults, "defaults", false, "take the default wherever the list leaves something open")
	session.Choices(cmd, "unit", "in", "mm")
}

// reading turns the flags into what the reader of lists wants.
func (o Options) reading() (piecelist.Options, error) {
	reading := piecelist.Options{Defaults: o.defaults, Answers: map[string]string{}}
	if o.unit != "" {
		unit, err := session.UnitNamed(o.unit)
		if err != nil {
			return reading, err
		}
		reading.Unit = piecelist.Inches
		if unit == measure.Millimetres {
			reading.Unit = piecelist.Millimetres
		}
	}
	for _, text := range o.columns {
		word, head, ok := strings.Cut(text, "=")
		field, known := piecelist.ParseField(word)
		if !ok || !known || strings.TrimSpace(head) == "" {
			return reading, session.Usage(fmt.Errorf("--column says what a column holds and its head, as in --column length=L, not %q; it may hold %s",
				text, plantext.List(piecelist.FieldNames(), "or")))
		}
		reading.Columns = append(reading.Columns, piecelist.Column{Field: field, Head: strings.TrimSpace(head)})
	}
	return reading, nil
}

// openList reads the list's bytes, and returns its name for messages.
func openList(a *session.Session, o Options) (name string, data []byte, reading piecelist.Options, err error) {
	if reading, err = o.reading(); err != nil {
		return "", nil, reading, err
	}
	if data, err = a.ReadFile(o.From); err != nil {
		return "", nil, reading, err
	}
	if name = o.From; name == "-" {
		name = "stdin"
	}
	return name, data, reading, nil
}

// Make writes the plan of a list, once all is asked that the list leaves
// open.
func Make(a *session.Session, to string, o Options, force bool) error {
	if _, err := os.Stat(to); to != "-" && !force && !errors.Is(err, fs.ErrNotExist) {
		// Said before anything is asked.
		return fmt.Errorf("%s is already there; use --force to write over it, or name another file", to)
	}
	name, data, reading, err := openList(a, o)
	if err != nil {
		return err
	}
	var list *piecelist.List
	err = settle(a, o.From != "-", reading.Answers, func() (questions []piecelist.Question, err error) {
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
		fmt.Fprintf(a.Err, "%s: left out: %s\n", name, left)
	}
	if to == "-" {
		_, err := a.Out.Write(text)
		return err
	}
	if err := a.WriteFile(to, text, force); err != nil {
		return err
	}
	return a.Wrote("%s: a plan of %s from %s of %s\nNext: add the joints, then fencecard cards %[1]s\n",
		to, Numbered(pieces(plan), "piece"), Numbered(len(list.Pieces), "row"), name)
}

// pieces counts the pieces of wood of a plan.
func pieces(plan *joinery.Plan) int {
	n := 0
	for i := range plan.Pieces {
		n += plan.Pieces[i].Count
	}
	return n
}

// Numbered counts things: "1 row", "2 rows".
func Numbered(n int, what string) string {
	if n == 1 {
		return "1 " + what
	}
	return fmt.Sprintf("%d %ss", n, what)
}

// Compare tells how a list differs from a plan.
func Compare(a *session.Session, o Options) error {
	name, data, reading, err := openList(a, o)
	if err != nil {
		return err
	}
	plan, err := a.ReadPlan([]string{o.Against})
	if err != nil {
		return err
	}
	var differences []piecelist.Difference
	err = settle(a, o.From != "-", reading.Answers, func() (questions []piecelist.Question, err error) {
		differences, questions, err = piecelist.Compare(name, data, reading, plan)
		return questions, err
	})
	if err != nil {
		return err
	}
	if len(differences) == 0 {
		return a.Tell("%s and %s agree\n", name, o.Against)
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
		if err := a.Tell("%s%s%s\n", at, d.Says, behind); err != nil {
			return err
		}
	}
	return nil
}

// Check faults flags of a list without one.
func (o Options) Check(shop bool) error {
	switch {
	case o.From == "" && (o.Against != "" || o.unit != "" || o.defaults || o.columns != nil):
		return session.Usage(errors.New("--against, --column, --unit and --defaults are for a list: add --from LIST"))
	case o.From != "" && shop:
		return session.Usage(errors.New("--shop writes a shop file, and --from a plan: leave one out"))
	}
	return nil
}
