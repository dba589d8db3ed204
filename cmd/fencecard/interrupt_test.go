package main

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/session"
	"fencecard/cmd/internal/terminal"
)

// listen keeps interrupts from ending the tests: while somebody listens, they end
// no process. It lasts, since one may still be on its way when a test is over.
var listen = sync.OnceFunc(func() { signal.Notify(make(chan os.Signal, 1), os.Interrupt) })

func interrupt(t *testing.T) {
	t.Helper()
	listen()
	self, err := os.FindProcess(os.Getpid())
	require.NoError(t, err)
	require.NoError(t, self.Signal(os.Interrupt))
	require.NoError(t, self.Release()) // it holds a file open
}

func TestInterruptCallsTheSearchOff(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no process can be interrupted there")
	}
	searching, stop := terminal.CallOff(t.Context())
	defer stop()
	interrupt(t)
	<-searching.Done() // a test that hangs here has failed
	assert.NoError(t, t.Context().Err())
}

func TestASearchCalledOffSaysSo(t *testing.T) {
	plan, err := (&session.Session{Err: &bytes.Buffer{}}).ReadPlan(nil)
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	var told bytes.Buffer
	deck, err := (&app{Session: &session.Session{Err: &told}}).deckFor(ctx, plan, cardsOptions{again: session.Printed{Batch: 1, Search: 1 << 40, Book: "none.txt"}})
	require.NoError(t, err)
	assert.NotEmpty(t, deck.Setups)
	assert.Contains(t, told.String(), "interrupted: the search for fewer changes was cut short")
	assert.Contains(t, told.String(), "write it as JSON too")
}

// hardPlan is a plan that is searched for as long as it may be: boards of grooves
// of all widths and distances, which wait for each other.
func hardPlan(t *testing.T) string {
	t.Helper()
	dice := rand.New(rand.NewPCG(1, 1))
	var text strings.Builder
	text.WriteString("unit: in\nwood: black cherry\npieces:\n")
	for i := range 20 {
		fmt.Fprintf(&text, "  - piece: board %d\n    size: {left-right: 30, front-back: 3/4, top-bottom: 8}\n    cuts:\n", i)
		after := ""
		for k, side := range []string{"front", "back", "front"} {
			fmt.Fprintf(&text, "      - {groove: g%d, in: %s, width: %d/16, setback: %d/16 from bottom, depth: %d/16, fence: either%s}\n",
				k, side, 4+dice.IntN(17), 4+dice.IntN(97), 2+dice.IntN(5), after)
			after = fmt.Sprintf(", after: g%d", k)
		}
	}
	file := filepath.Join(t.TempDir(), "hard.yaml")
	require.NoError(t, os.WriteFile(file, []byte(text.String()), 0o600))
	return file
}

// The first interrupt ends the search of every command that has one, and the
// command does its work with what was found.
func TestInterruptsEndOnlyTheSearch(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no process can be interrupted there")
	}
	plan := hardPlan(t)
	book := filepath.Join(t.TempDir(), "book.txt")
	for _, line := range []string{
		"cards " + plan + " --format text --book " + book,
		"book keep " + plan + " --setup 1 --name x --book " + book,
		"book match " + plan + " --book " + book,
		"check " + plan,
	} {
		done := make(chan struct{})
		var sent sync.WaitGroup
		sent.Go(func() {
			for {
				select {
				case <-done:
					return
				default:
					interrupt(t)
					time.Sleep(time.Millisecond)
				}
			}
		})
		var told bytes.Buffer
		code := run(t.Context(), strings.Fields(line), streams{strings.NewReader(""), io.Discard, &told})
		close(done)
		sent.Wait()
		assert.Equal(t, exitDone, code, line)
		assert.Contains(t, told.String(), "interrupted: the search for fewer changes was cut short", line)
	}
	assert.FileExists(t, book)
}

// Where nothing is searched for, an interrupt ends the program as it would any
// other.
func TestInterruptWhileReading(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no process can be interrupted there")
	}
	for _, command := range []string{"cards", "check"} {
		cmd := exec.Command("fencecard", command, "-")
		in, err := cmd.StdinPipe()
		require.NoError(t, err)
		require.NoError(t, cmd.Start())
		// More than a pipe holds: once it is gone, the program is reading.
		_, err = in.Write([]byte(strings.Repeat("# a remark\n", 100_000)))
		require.NoError(t, err)
		require.NoError(t, cmd.Process.Signal(os.Interrupt))
		_ = cmd.Wait() // fails by the signal, which is looked at below
		status, ok := cmd.ProcessState.Sys().(syscall.WaitStatus)
		require.True(t, ok)
		assert.True(t, status.Signaled(), command)
		assert.Equal(t, syscall.SIGINT, status.Signal(), command)
	}
}
