package main

import (
	"bytes"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/terminal"
	"fencecard/cmd/internal/typed"
)

// withValue are commands that take a value of any kind from the command line.
// They write no file.
func withValue(value string) [][]string {
	return [][]string{
		{"wood", value},
		{"wood", "emc", "--rh", "50", "--temp=" + value},
		{"wood", "emc", "--rh=" + value},
		{"wood", "change", "red oak", "--from", "6", "--to", "8", "--width=" + value},
		{"wood", "change", "red oak", "--width", "5", "--to", "8", "--from=" + value},
		{"wood", "change", "red oak", "--width", "5", "--rh-from", "30", "--rh-to=" + value},
		{"wood", "--format=" + value},
		{"shop", "--unit=" + value},
		{"check", "plan.yaml", "--batch=" + value},
		{"check", "plan.yaml", "--format=" + value},
		{"check", "plan.yaml", "--run", "1.1", "--fence=" + value},
		{"check", "plan.yaml", "--fence", "1/2", "--run=" + value},
		{"check", "plan.yaml", "--near", "1/2", "--", value},
		{"check", "plan.yaml", "1.1", "--back-stop=" + value},
		{"check", "plan.yaml", "--deck-code=" + value},
		{"correct", "plan.yaml", "--run", "1.1", "--width=" + value},
		{"cards", "plan.yaml", "--format", "text", "--out", "-", "--only-piece=" + value},
		{"cards", "plan.yaml", "--format", "text", "--out", "-", "--only-setup=" + value},
		{"cards", "plan.yaml", "--format", "text", "--out", "-", "--search=" + value},
		{"cards", "plan.yaml", "--out", "-", "--paper=" + value},
		{"cards", "plan.yaml", "--out", "-", "--only=" + value},
		{"cards", "plan.yaml", "--out", "-", "--only-run=" + value},
		{"cards", "plan.yaml", "--out", "-", "--units=" + value},
		{"cards", "plan.yaml", "--format", "svg", "--out", "-", "--only-run=" + value},
		{"book", "show", "--book", "book.txt", "--", value},
		{"help", value},
		{"--" + value},
	}
}

// inWorkshop makes a folder with the leg's plan and book the current one.
func inWorkshop(t testing.TB) {
	t.Helper()
	folder := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(folder, "plan.yaml"), []byte(legPlan), 0o666))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "book.txt"), []byte(legBook), 0o666))
	t.Chdir(folder)
}

// said runs the program and checks what holds of any command line: it ends with
// one of three codes, tells on standard error what is wrong, and does not fill
// the screen with what it was given.
func said(t testing.TB, args []string) {
	t.Helper()
	var out, err bytes.Buffer
	code := run(t.Context(), args, streams{strings.NewReader(""), &out, &err})
	assert.Contains(t, []int{exitDone, exitFault, exitUsage}, code)
	if code != exitDone {
		assert.NotEmpty(t, strings.TrimSpace(err.String()), "%.200q", args)
		assert.Less(t, err.Len(), 8000, "%.200q", args)
	}
}

// Values of the command line may be as long as a system lets them be.
func TestLongValues(t *testing.T) {
	inWorkshop(t)
	for _, part := range []string{"9", " ", "1/", "1 ", ".", ",", "1,", "e", "x", "é", "\xff", "\"", "'"} {
		for _, args := range withValue(strings.Repeat(part, 120_000/len(part))) {
			said(t, args)
		}
	}
}

// FuzzValues gives any text to any of these commands.
func FuzzValues(f *testing.F) {
	for _, value := range []string{"", "3", "1/2", "1.1", "70F", "red oak", "oak", "a4", "json", "5s", "-1", "NaN", "1e999", "1,2", "\x00", "\xff", "leg", "nhk1-30vq"} {
		for i := range withValue(value) {
			f.Add(value, uint8(i))
		}
	}
	inWorkshop(f)
	f.Fuzz(func(t *testing.T, value string, which uint8) {
		commands := withValue(value)
		args := commands[int(which)%len(commands)]
		if args[0] == "--"+value && strings.Contains(value, "=") {
			return // a flag of its own
		}
		said(t, args)
	})
}

// FuzzJoinLengths holds: words are joined with a blank and nothing else is done
// to them.
func FuzzJoinLengths(f *testing.F) {
	for _, line := range []string{"check p --stop 3 1/4", "--fence 1/2", "--stop=3 1/4 --start 15/32", "--height -1 1/2in", "--length", "--depth 3", "--stop 3 1/4 1/4"} {
		f.Add(line)
	}
	f.Fuzz(func(t *testing.T, line string) {
		args := strings.Split(line, " ")
		joined := typed.JoinLengths(args)
		assert.LessOrEqual(t, len(joined), len(args))
		assert.Equal(t, line, strings.Join(joined, " "))
	})
}

func TestAbridged(t *testing.T) {
	long := "\"" + strings.Repeat("é", terminal.LongestLine) + "\" is no wood; write one"
	got := terminal.Abridged("first\n" + long + "\nlast")
	assert.Less(t, len(got), terminal.LongestLine)
	assert.True(t, strings.HasPrefix(got, "first\n\"éé"))
	assert.True(t, strings.HasSuffix(got, "é\" is no wood; write one\nlast"))
	assert.Equal(t, "as it is\n", terminal.Abridged("as it is\n"))
}
