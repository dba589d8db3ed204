package manual

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"
)

// ExitStatus is a code with which the program ends, and what it says.
type ExitStatus struct {
	Code int
	Says string
}

// Page writes the page with the man macros, of what the commands say of
// themselves.
func Page(root *cobra.Command, version string, statuses []ExitStatus) string {
	m := &manual{}
	m.line(`.TH FENCECARD 1 "" "fencecard %s" "User Commands"`, roff(version))
	m.line(".SH NAME\n%s \\- %s", root.Name(), roff(lowerFirst(root.Short)))
	m.line(".SH SYNOPSIS\n.B %s\n.I command\n.RI [ flags ]", root.Name())
	m.line(".SH DESCRIPTION")
	m.paragraphs(root.Long)
	m.line(".SH OPTIONS")
	root.LocalFlags().VisitAll(func(f *pflag.Flag) {
		if f.Name != "help" {
			m.flag(f)
		}
	})
	m.line(".SH COMMANDS")
	m.commands(root)
	for _, topic := range root.Commands() {
		if topic.IsAdditionalHelpTopicCommand() {
			m.line(".SH %s", strings.ToUpper(roff(topic.Short)))
			m.verbatim(topic.Long)
		}
	}
	m.line(".SH EXIT STATUS")
	for _, s := range statuses {
		m.line(".TP\n.B %d\n%s", s.Code, roff(s.Says))
	}
	m.line(".SH EXAMPLES")
	m.verbatim(root.Example)
	return m.String()
}

type manual struct{ strings.Builder }

func (m *manual) line(format string, args ...any) { fmt.Fprintf(m, format+"\n", args...) }

// commands describes the commands below one, and those below them.
func (m *manual) commands(parent *cobra.Command) {
	for _, c := range parent.Commands() {
		if !c.IsAvailableCommand() || c.Name() == "help" || c.Name() == "completion" {
			continue
		}
		m.line(".SS %s", roff(c.UseLine()))
		m.verbatim(c.Long)
		c.LocalFlags().VisitAll(func(f *pflag.Flag) {
			if f.Name != "help" {
				m.flag(f)
			}
		})
		m.line(".PP")
		m.verbatim(c.Example)
		m.commands(c)
	}
}

func (m *manual) flag(f *pflag.Flag) {
	value, usage := pflag.UnquoteUsage(f)
	name := `\-\-` + roff(f.Name)
	if f.Shorthand != "" {
		name = `\-` + f.Shorthand + `, ` + name
	}
	m.line(".TP\n\\fB%s\\fR \\fI%s\\fR\n%s", name, roff(value), roff(usage))
}

// paragraphs writes running text.
func (m *manual) paragraphs(text string) {
	for part := range strings.SplitSeq(strings.TrimSpace(text), "\n\n") {
		m.line(".PP\n%s", roff(part))
	}
}

// verbatim writes text that is laid out already.
func (m *manual) verbatim(text string) {
	if text = strings.Trim(text, "\n"); text != "" {
		m.line(".PP\n.nf\n%s\n.fi", roff(text))
	}
}

// escapes are what the page's reader would take for more than a letter.
var escapes = strings.NewReplacer(`\`, `\e`, "-", `\-`, "\n.", "\n\\&.", "\n'", "\n\\&'")

func roff(text string) string {
	var b strings.Builder
	for _, r := range strings.TrimPrefix(escapes.Replace("\n"+text), "\n") {
		if r < utf8.RuneSelf {
			b.WriteRune(r)
		} else {
			fmt.Fprintf(&b, `\[u%04X]`, r)
		}
	}
	return b.String()
}

func lowerFirst(text string) string { return strings.ToLower(text[:1]) + text[1:] }
