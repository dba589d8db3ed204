package session

import (
	"fmt"
	"strings"

	"github.com/spf13/cobra"

	"fencecard/joinery/plantext"
)

// Format is a form in which something goes out. What stands here of it is said and
// held nowhere else: help, completion, messages and the endings of files come from it.
type Format struct {
	Name    string   // behind --format
	Endings []string // of its files, the first being the one that help names
	Drawn   bool     // on pages or for a screen: flags of pages mean something to it
	Stamped bool     // in a file called after its plan, with a stamp by which it gives way
}

// The formats there are.
var (
	PDF  = &Format{Name: "pdf", Endings: []string{".pdf"}, Drawn: true, Stamped: true}
	HTML = &Format{Name: "html", Endings: []string{".html", ".htm"}, Drawn: true, Stamped: true}
	SVG  = &Format{Name: "svg", Endings: []string{".svg"}, Drawn: true}
	Text = &Format{Name: "text", Endings: []string{".txt"}}
	JSON = &Format{Name: "json", Endings: []string{".json"}}
)

// Formats are those of a command, in the order in which they are named; the first is
// what it prints where nothing else is said.
type Formats[W any] []Offered[W]

// Offered is a format of a command.
type Offered[W any] struct {
	*Format
	For   string // what alone it is for, as help says it; "" for everything
	Write W      // what writes it
}

// Flag adds --format.
func (fs Formats[W]) Flag(cmd *cobra.Command, format *string) {
	var all, some []string
	for _, f := range fs {
		if f.For == "" {
			all = append(all, f.Name)
		} else {
			some = append(some, "; "+f.Name+" for "+f.For)
		}
	}
	cmd.Flags().StringVar(format, "format", fs[0].Name, "the `FORMAT`: "+plantext.List(all, "or")+strings.Join(some, ""))
	Choices(cmd, "format", fs.names()...)
}

// OutSays is what the help of --out says of the endings of files.
func (fs Formats[W]) OutSays() string {
	firsts := make([]string, len(fs))
	for i, f := range fs {
		firsts[i] = f.Endings[0][1:]
	}
	return "write to this `FILE`, by its ending as " + plantext.List(firsts, "or") + "; - for standard output"
}

// Of is what the command offers of a format.
func (fs Formats[W]) Of(format *Format) Offered[W] {
	for _, f := range fs {
		if f.Format == format {
			return f
		}
	}
	panic("a format that the command does not offer: " + format.Name)
}

// Named is the format that --format names.
func (fs Formats[W]) Named(name string) (Offered[W], error) {
	for _, f := range fs {
		if f.Name == name {
			return f, nil
		}
	}
	return Offered[W]{}, Usage(fmt.Errorf("--format is %s, not %q", plantext.List(fs.names(), "or"), name))
}

// ending is the format of files that end so, nil for none.
func (fs Formats[W]) ending(ending string) *Format {
	for _, f := range fs {
		for _, e := range f.Endings {
			if strings.EqualFold(e, ending) {
				return f.Format
			}
		}
	}
	return nil
}

func (fs Formats[W]) endings() (all []string) {
	for _, f := range fs {
		all = append(all, f.Endings...)
	}
	return all
}

func (fs Formats[W]) names() []string {
	all := make([]string, len(fs))
	for i, f := range fs {
		all[i] = f.Name
	}
	return all
}

// textOrJSON are the formats of most commands; what writes them tells whether it is JSON.
var textOrJSON = Formats[bool]{{Text, "", false}, {JSON, "", true}}

// FormatFlag is the flag of commands that print text or JSON.
func FormatFlag(cmd *cobra.Command, format *string) { textOrJSON.Flag(cmd, format) }

// AsJSON checks the value of that flag.
func AsJSON(format string) (bool, error) {
	f, err := textOrJSON.Named(format)
	return f.Write, err
}
