package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const megabyte = 1 << 20

// How many times a document's size the program may hold at once. A tree of YAML
// takes far more than its text, and the library holds all that stands in one pair
// of braces until they close.
const (
	mostTimes         = 20 // decks and setup books
	mostTimesTree     = 120
	mostTimesInBraces = 300

	mostBusy = 5 // how often a peak is measured again
)

// documentKind is a kind of document, and a command that reads one.
type documentKind struct {
	file  string   // what the document is called in its folder
	args  []string // of the command
	sound string   // a small document that the command takes
	plan  string   // written beside it as plan.yaml where the command wants one
}

// hostileDocument is a document that no maker writes, for one kind of reader.
type hostileDocument struct {
	name string
	kind documentKind
	text func() string
	says string // part of the message, with its place
	exit int    // exitFault, or exitDone where the command can do without
	most int    // how many times its size the program may hold
}

// TestPeakMemory gives the program, in a process of its own, documents of a
// megabyte and more that mean harm. It ends with the right exit code and says
// what is wrong and where, and at its peak it has held no more than so many times
// the document beyond what it holds for a small sound one.
func TestPeakMemory(t *testing.T) {
	t.Parallel()
	for _, doc := range hostileDocuments() {
		t.Run(doc.name, func(t *testing.T) {
			t.Parallel()
			text := doc.text()
			require.GreaterOrEqual(t, len(text), megabyte)
			base := basePeak(t, doc.kind)
			peak, code, said := readApart(t, doc.kind, text)
			for range mostBusy { // a busy machine lets garbage lie longer: what is held is the least of a few
				if peak-base <= doc.most*len(text) {
					break
				}
				again, _, _ := readApart(t, doc.kind, text)
				peak = min(peak, again)
			}
			assert.Equal(t, doc.exit, code)
			assert.Contains(t, said, doc.says)
			assert.NotContains(t, said, "panic")
			assert.NotContains(t, said, "goroutine")
			if doc.exit == exitFault {
				assert.Less(t, len(said), max(128<<10, len(text)/2), "the message")
			}
			if peak > 0 {
				t.Logf("%.1f MB, %.1f times", float64(len(text))/megabyte, float64(peak-base)/float64(len(text)))
				assert.LessOrEqual(t, peak-base, doc.most*len(text))
			}
		})
	}
}

// basePeaks holds what each command takes for its small document.
var basePeaks sync.Map

func basePeak(t *testing.T, kind documentKind) int {
	t.Helper()
	key := fmt.Sprint(kind.args)
	if peak, ok := basePeaks.Load(key); ok {
		return peak.(int)
	}
	peak, code, said := readApart(t, kind, kind.sound)
	require.Equal(t, exitDone, code, said)
	basePeaks.Store(key, peak)
	return peak
}

// readApart has a command read a document in a process of its own and returns
// its peak, 0 where the system does not tell it, its exit code and all it said.
func readApart(t testing.TB, kind documentKind, text string) (peak, code int, said string) {
	t.Helper()
	return readIn(t, t.TempDir(), kind, text)
}

// readIn does so in a folder that the test goes on with.
func readIn(t testing.TB, folder string, kind documentKind, text string) (peak, code int, said string) {
	t.Helper()
	if kind.plan != "" {
		require.NoError(t, os.WriteFile(filepath.Join(folder, "plan.yaml"), []byte(kind.plan), 0o666))
	}
	require.NoError(t, os.WriteFile(filepath.Join(folder, kind.file), []byte(text), 0o666))
	cmd := exec.Command("fencecard-peak", append([]string{filepath.Join(folder, ".peak")}, kind.args...)...)
	cmd.Dir = folder
	var out bytes.Buffer
	cmd.Stdout, cmd.Stderr = &out, &out
	err := cmd.Run()
	var exit *exec.ExitError
	if err != nil && !errors.As(err, &exit) {
		require.NoError(t, err)
	}
	told, err := os.ReadFile(filepath.Join(folder, ".peak"))
	require.NoError(t, err, out.String())
	_, err = fmt.Sscan(string(told), &peak)
	require.NoError(t, err)
	return peak, cmd.ProcessState.ExitCode(), out.String()
}

// tellPeak is a process that is the program and in the end writes its peak into
// a file: fencecard-peak FILE ARG...
func tellPeak() {
	code := run(context.Background(), os.Args[2:], streams{os.Stdin, os.Stdout, os.Stderr})
	if err := os.WriteFile(os.Args[1], []byte(fmt.Sprint(peak())), 0o666); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(exitUsage)
	}
	os.Exit(code)
}

// fill repeats a text up to a size.
func fill(text string, size int) string { return strings.Repeat(text, size/len(text)+1) }

// counted writes a line for every number from 0 until the text has a size.
func counted(head, line string, size int) string {
	var b strings.Builder
	b.WriteString(head)
	for i := 0; b.Len() < size; i++ {
		fmt.Fprintf(&b, line, i)
	}
	return b.String()
}

// wide spells a text as UTF-16, the low byte first.
func wide(text string) string {
	return "\xff\xfe" + strings.Join(strings.SplitAfter(text, ""), "\x00") + "\x00"
}
