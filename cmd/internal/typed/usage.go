// Package typed understands what was typed: lengths that a shell took apart are
// joined, and what is wrong with a command line is said as what to type.
package typed

import (
	"errors"
	"fmt"
	"strings"

	"github.com/spf13/cobra"
	"github.com/spf13/pflag"

	"fencecard/joinery/pattern"
	"fencecard/joinery/plantext"
)

// Words turns what the library says of a wrong command line into what to
// type. What it does not know stays as it is. The flags of other commands are
// asked for where one of theirs was taken for one of this.
func Words(cmd *cobra.Command, err error, flagsOf func(command string) *pflag.FlagSet) string {
	var unknown *pflag.NotExistError
	var empty *pflag.ValueRequiredError
	var invalid *pflag.InvalidValueError
	switch {
	case errors.As(err, &unknown):
		return unknownFlag(cmd, unknown, flagsOf)
	case errors.As(err, &empty):
		what, _ := pflag.UnquoteUsage(empty.GetFlag())
		return fmt.Sprintf("--%s needs its value behind it: --%[1]s %s", empty.GetFlag().Name, strings.ToUpper(what))
	case errors.As(err, &invalid):
		return fmt.Sprintf("--%s takes %s, not %q", invalid.GetFlag().Name, valueOf(invalid.GetFlag()), invalid.GetValue())
	}
	for _, w := range libraryWords {
		if m := w.said.FindStringSubmatch(err.Error()); m != nil {
			return w.meant(cmd, m[1:])
		}
	}
	return err.Error()
}

// libraryWords are the sentences of cobra that have no type of their own.
var libraryWords = []struct {
	said  pattern.Pattern
	meant func(cmd *cobra.Command, found []string) string
}{
	{pattern.New(`^accepts .*, received 0$|^requires at least`), missingWord},
	{pattern.New(`^accepts .*, received|^unknown command .* for`), leftOver},
	{pattern.New(`^required flag\(s\) "(.*)" not set$`), func(cmd *cobra.Command, found []string) string {
		return "give " + FlagList(strings.Split(found[0], `", "`), "and") + "; " + asIn(cmd)
	}},
	{pattern.New(`^at least one of the flags in the group \[(.*)\] is required$`), func(cmd *cobra.Command, found []string) string {
		return "give " + FlagList(strings.Fields(found[0]), "or") + "; " + asIn(cmd)
	}},
	{pattern.New(`in the group \[(.*)\] are set they must all be set; missing \[(.*)\]$`), func(_ *cobra.Command, found []string) string {
		return FlagList(strings.Fields(found[0]), "and") + " go together: give " + FlagList(strings.Fields(found[1]), "and") + " too"
	}},
	{pattern.New(`none of the others can be; \[(.*)\] were all set$`), func(_ *cobra.Command, found []string) string {
		return FlagList(strings.Fields(found[0]), "and") + " do not go together: leave one out"
	}},
}

func missingWord(cmd *cobra.Command, _ []string) string {
	word := strings.Fields(cmd.Use)[1]
	return fmt.Sprintf("the %s is missing: %s %s; %s", word, cmd.CommandPath(), word, asIn(cmd))
}

func leftOver(cmd *cobra.Command, _ []string) string {
	taken := len(strings.Fields(cmd.Use)) - 1
	if i := strings.Index(cmd.Use, " --"); i >= 0 {
		taken = len(strings.Fields(cmd.Use[:i])) - 1
	}
	words := cmd.Flags().Args()
	return fmt.Sprintf("%s: what is %q? A name or a length of several words goes in quotes, as \"7 1/64\"",
		cmd.CommandPath(), words[min(taken, len(words)-1)])
}

// asIn is the first example of a command.
func asIn(cmd *cobra.Command) string {
	example, _, _ := strings.Cut(strings.TrimSpace(cmd.Example), "\n")
	return "as in " + example
}

func unknownFlag(cmd *cobra.Command, err *pflag.NotExistError, flagsOf func(command string) *pflag.FlagSet) string {
	if letters := err.GetSpecifiedShortnames(); letters != "" {
		if strings.ContainsAny(letters, "./") {
			return fmt.Sprintf("-%s is taken for a flag; a file whose name begins with - is written ./-%[1]s", letters)
		}
		return fmt.Sprintf("there is no flag -%s", letters)
	}
	var names []string
	cmd.Flags().VisitAll(func(f *pflag.Flag) { names = append(names, f.Name) })
	text := "there is no flag --" + err.GetSpecifiedName()
	if other := measuredBy(cmd, err.GetSpecifiedName(), flagsOf); other != "" {
		return text + " here: " + other
	}
	if near := plantext.Nearest(err.GetSpecifiedName(), names); near != "" {
		text += fmt.Sprintf("; did you mean --%s?", near)
	}
	return text
}

// measuredBy tells where a measure is given that the command does not take: what
// stands on the table goes to check, what was cut to correct.
func measuredBy(cmd *cobra.Command, flag string, flagsOf func(command string) *pflag.FlagSet) string {
	var other, says string
	switch cmd.Name() {
	case "check":
		other, says = "correct", "what was measured on a test cut goes to fencecard correct"
	case "correct":
		other, says = "check", "what was measured on the table goes to fencecard check"
	default:
		return ""
	}
	if flags := flagsOf(other); flags == nil || flags.Lookup(flag) == nil {
		return ""
	}
	return fmt.Sprintf("%s PLAN RUN --%s", says, flag)
}

// valueOf says what a flag takes.
func valueOf(f *pflag.Flag) string {
	switch f.Value.Type() {
	case "int", "intSlice":
		return "a whole number"
	case "float64":
		return "a number"
	case "duration":
		return "a time such as 5s"
	}
	return "true or false"
}

// FlagList writes "--a, --b and --c".
func FlagList(names []string, last string) string {
	flags := make([]string, len(names))
	for i, name := range names {
		flags[i] = "--" + name
	}
	return plantext.List(flags, last)
}
