package main

import (
	"os"
	"os/exec"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A session in the README is indented lines that begin with "$ " and what they
// print; "..." stands for lines left out. All sessions are run in one folder,
// one after the other, in one shell.
func TestReadmeSessions(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the sessions are for a Unix shell")
	}
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	type step struct{ command, want string }
	var steps []step
	for line := range strings.Lines(string(readme)) {
		line, indented := strings.CutPrefix(strings.TrimSuffix(line, "\n"), "    ")
		command, isCommand := strings.CutPrefix(line, "$ ")
		switch {
		case !indented:
			steps = append(steps, step{})
		case isCommand:
			steps = append(steps, step{command: command})
		case len(steps) > 0:
			steps[len(steps)-1].want += line + "\n"
		}
	}
	const mark = "==== next ===="
	var script strings.Builder
	var want []string
	for _, s := range steps {
		if s.command != "" {
			script.WriteString(s.command + "\necho '" + mark + "'\n")
			want = append(want, s.want)
		}
	}
	require.NotEmpty(t, want)
	sh := exec.Command("sh", "-e")
	sh.Dir, sh.Stdin, sh.Stderr = t.TempDir(), strings.NewReader(script.String()), os.Stderr
	out, err := sh.Output()
	require.NoError(t, err, string(out))
	got := strings.Split(string(out), mark+"\n")
	require.Len(t, got, len(want)+1)
	for i := range want {
		// A line of dots stands for any lines.
		pattern := strings.ReplaceAll(regexp.QuoteMeta(want[i]), `\.\.\.`+"\n", `(?s:.*)`)
		assert.Regexp(t, `\A`+pattern+`\z`, got[i])
	}
}
