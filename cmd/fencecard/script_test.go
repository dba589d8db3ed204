package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
	"github.com/stretchr/testify/assert"

	"fencecard/output/page/browser"
)

func TestMain(m *testing.M) {
	testscript.Main(browser.Shared(m), map[string]func(){"fencecard": main, "fencecard-keeps": keepMany, "fencecard-peak": tellPeak})
}

// TestScripts runs the program as a maker would, one file a behaviour.
func TestScripts(t *testing.T) {
	testscript.RunT(briefly{t}, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("FENCECARD_GOLDEN") == "update",
		Setup:               shareTestdata,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "golden": golden},
	})
}

// briefly is a test whose log shows of what a command printed the beginning and the
// end, so that what went wrong is not behind the text of a whole deck; -v shows it all.
type briefly struct{ *testing.T }

func (t briefly) Run(name string, f func(testscript.T)) {
	t.T.Run(name, func(t *testing.T) { f(briefly{t}) })
}

func (t briefly) Verbose() bool { return testing.Verbose() }

func (t briefly) Log(args ...any) {
	t.Helper()
	log := fmt.Sprint(args...)
	if !t.Verbose() {
		log = shortened(log)
	}
	t.T.Log(log)
}

// shortened leaves of the lines that a command printed, in the log of a script, so many
// at the beginning and as many at the end.
func shortened(log string) string {
	const kept = 8
	var out, printed []string
	flush := func() {
		if cut := len(printed) - 2*kept; cut > 1 {
			printed = slices.Replace(printed, kept, kept+cut, fmt.Sprintf("... %d lines more, shown by -v ...", cut))
		}
		out, printed = append(out, printed...), nil
	}
	for line := range strings.SplitSeq(log, "\n") {
		if strings.HasPrefix(line, "> ") || strings.HasPrefix(line, "FAIL: ") || strings.HasPrefix(line, "[std") {
			flush()
			out = append(out, line)
			continue
		}
		printed = append(printed, line)
	}
	flush()
	return strings.Join(out, "\n")
}

func TestALogIsShort(t *testing.T) {
	deck := strings.Repeat("a line of a deck\n", 700)
	got := shortened("> exits 2 fencecard cards\n[stdout]\n" + deck + "[stderr]\na warning\nFAIL: x.txtar:2: exit code 1, want 2\n")
	assert.Len(t, strings.Split(got, "\n"), 2+8+1+8+3+1)
	assert.Contains(t, got, "\n... 684 lines more, shown by -v ...\n")
	assert.True(t, strings.HasSuffix(got, "[stderr]\na warning\nFAIL: x.txtar:2: exit code 1, want 2\n"))
}

// exits runs a program and checks its exit code: exits 2 fencecard cards --nope
func exits(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: exits CODE PROGRAM [ARG...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	err = ts.Exec(args[1], args[2:]...)
	got := 0
	if err != nil {
		var exit *exec.ExitError
		if !errors.As(err, &exit) {
			ts.Fatalf("%v", err)
		}
		got = exit.ExitCode()
	}
	if got != want {
		ts.Fatalf("exit code %d, want %d (%s)", got, want, fmt.Sprint(args[1:]))
	}
}

// shareTestdata lets scripts read the project's plans as $TESTDATA.
func shareTestdata(env *testscript.Env) error {
	dir, err := filepath.Abs("../../testdata")
	env.Setenv("TESTDATA", dir)
	return err
}

// golden compares standard output with a file of the project's testdata, or
// refreshes that file: golden decks/boot-bench.txt
func golden(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: golden FILE")
	}
	got, name := ts.ReadFile("stdout"), filepath.Join(ts.Getenv("TESTDATA"), args[0])
	if os.Getenv("FENCECARD_GOLDEN") == "update" {
		ts.Check(os.WriteFile(name, []byte(got), 0o644))
		return
	}
	want, err := os.ReadFile(name)
	ts.Check(err)
	if got != string(want) {
		ts.Fatalf("standard output differs from %s; read the difference, then refresh it with FENCECARD_GOLDEN=update", name)
	}
}
