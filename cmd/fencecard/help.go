package main

import "github.com/spf13/cobra"

// helpTemplate shows what to type before what it means: whoever asks for help
// at the table has read the rest once.
const helpTemplate = `{{.Short}}
{{if .Runnable}}
  {{.UseLine}}
{{end}}{{if .HasExample}}
Examples:
{{.Example}}
{{end}}{{with .Long}}
{{.}}
{{end}}{{if .HasAvailableSubCommands}}
Commands:{{range .Commands}}{{if .IsAvailableCommand}}
  {{rpad .Name .NamePadding}} {{.Short}}{{end}}{{end}}
{{end}}{{if .HasAvailableLocalFlags}}
Flags:
{{.LocalFlags.FlagUsages | trimTrailingWhitespaces}}
{{end}}{{if .HasAvailableInheritedFlags}}
Flags of every command:
{{.InheritedFlags.FlagUsages | trimTrailingWhitespaces}}
{{end}}{{if .HasHelpSubCommands}}
Help topics:{{range .Commands}}{{if .IsAdditionalHelpTopicCommand}}
  {{rpad .CommandPath .CommandPathPadding}} {{.Short}}{{end}}{{end}}
{{end}}{{if .HasAvailableSubCommands}}
'{{.CommandPath}} COMMAND --help' tells more of a command.
{{end}}`

// tellVersion gives the program its --version.
func tellVersion(root *cobra.Command) {
	root.Version = versionText()
	root.SetVersionTemplate(versionLine() + "\n")
}
