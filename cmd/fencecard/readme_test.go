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
// print; "..." stands for lines left out. A fenced block whose first line is a
// remark with a file's name is that file, and so is one whose fence has a name
// behind the language. All is done in one folder, one after
// the other, in one shell. A command may fail only where all it prints is shown.
func TestReadmeSessions(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the sessions are for a Unix shell")
	}
	readme, err := os.ReadFile("../../README.md")
	require.NoError(t, err)
	type step struct{ command, want string }
	var steps []step
	file, fenced := "", false
	for line := range strings.Lines(string(readme)) {
		if strings.HasPrefix(line, "```") {
			if fenced = !fenced; !fenced && file != "" {
				steps = append(steps, step{command: file + "END"})
			}
			if file = ""; fenced {
				if name := strings.Fields(line); len(name) > 1 {
					file = "cat <<'END' >" + name[1] + "\n"
				}
			}
			continue
		}
		if fenced {
			if name := fileName.FindStringSubmatch(line); name != nil {
				file = "cat <<'END' >" + name[1] + "\n"
			}
			if file != "" {
				file += line
			}
			continue
		}
		line, indented := strings.CutPrefix(strings.TrimSuffix(line, "\n"), "    ")
		command, isCommand := strings.CutPrefix(line, "$ ")
		switch {
		case line == "":
			if n := len(steps); n > 0 && steps[n-1].command != "" {
				steps[n-1].want += "\n"
			}
		case !indented:
			steps = append(steps, step{})
		case isCommand:
			steps = append(steps, step{command: command})
		case len(steps) > 0:
			steps[len(steps)-1].want += line + "\n"
		}
	}
	const dots = "...\n"
	script := "exec 2>&1\n"
	var want []string
	for _, s := range steps {
		if s.command != "" {
			script += s.command + "\necho \"==== $? ====\"\n"
			want = append(want, strings.TrimRight(s.want, "\n"))
		}
	}
	require.NotEmpty(t, want)
	sh := exec.Command("sh")
	sh.Dir, sh.Stdin = t.TempDir(), strings.NewReader(script)
	out, err := sh.Output()
	require.NoError(t, err, string(out))
	got := stepEnd.Split(string(out), -1)
	codes := stepEnd.FindAllStringSubmatch(string(out), -1)
	require.Len(t, codes, len(want))
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		refreshCodes(t, string(readme), want, got)
		return
	}
	for i := range want {
		// A line of dots stands for any lines.
		pattern := strings.ReplaceAll(regexp.QuoteMeta(want[i]+"\n"), regexp.QuoteMeta(dots), `(?s:.*)`)
		assert.Regexp(t, `\A`+pattern+`\z`, strings.TrimRight(got[i], "\n")+"\n")
		if strings.Contains(want[i]+"\n", dots) {
			assert.Equal(t, "0", codes[i][1], want[i])
		}
	}
}

// refreshCodes writes the codes that decks and kept setups have now into the
// README; they change with everything that these say.
func refreshCodes(t *testing.T, readme string, want, got []string) {
	for i := range want {
		for _, code := range []*regexp.Regexp{printedCode, keptCode} {
			was, is := code.FindAllStringSubmatch(want[i], -1), code.FindAllStringSubmatch(got[i], -1)
			if len(was) != len(is) {
				continue
			}
			for n := range was {
				readme = regexp.MustCompile(`(deck |@|\()`+was[n][1]+`\b`).ReplaceAllString(readme, "${1}"+is[n][1])
			}
		}
	}
	require.NoError(t, os.WriteFile("../../README.md", []byte(readme), 0o644))
}

var (
	keptCode    = regexp.MustCompile(`\((\w{4}-\w{4})\)`)
	printedCode = regexp.MustCompile(`(?m)(?:^|, )deck (\w{4})$`)
	fileName    = regexp.MustCompile(`^# (\S+\.yaml)\n$`)
	stepEnd     = regexp.MustCompile(`==== (\d+) ====\n`)
)
