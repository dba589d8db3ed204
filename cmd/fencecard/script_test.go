package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"fencecard/output/page/browser"
)

func TestMain(m *testing.M) {
	testscript.Main(browser.Shared(m), map[string]func(){"fencecard": main, "fencecard-keeps": keepMany, "fencecard-peak": tellPeak})
}

// TestScripts runs the program as a maker would, one file a behaviour.
func TestScripts(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir:                 "testdata",
		RequireExplicitExec: true,
		RequireUniqueNames:  true,
		UpdateScripts:       os.Getenv("FENCECARD_GOLDEN") == "update",
		Setup:               shareTestdata,
		Cmds:                map[string]func(*testscript.TestScript, bool, []string){"exits": exits, "golden": golden},
	})
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
