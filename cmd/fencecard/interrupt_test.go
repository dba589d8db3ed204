package main

import (
	"bytes"
	"context"
	"os"
	"os/exec"
	"runtime"
	"strings"
	"syscall"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func interrupt(t *testing.T) {
	t.Helper()
	self, err := os.FindProcess(os.Getpid())
	require.NoError(t, err)
	require.NoError(t, self.Signal(os.Interrupt))
}

func TestInterruptCallsTheSearchOff(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("no process can be interrupted there")
	}
	searching, stop := callOff(t.Context())
	defer stop()
	interrupt(t)
	<-searching.Done() // a test that hangs here has failed
	assert.NoError(t, t.Context().Err())
}

func TestASearchCalledOffSaysSo(t *testing.T) {
	plan, err := (&app{streams: streams{err: &bytes.Buffer{}}}).readPlan(nil)
	require.NoError(t, err)
	ctx, cancel := context.WithCancel(t.Context())
	cancel()
	var told bytes.Buffer
	deck, err := (&app{streams: streams{err: &told}}).deckFor(ctx, plan, cardsOptions{batch: 1, search: 1 << 40, book: "none.txt"})
	require.NoError(t, err)
	assert.NotEmpty(t, deck.Setups)
	assert.Contains(t, told.String(), "interrupted: the search for fewer changes was cut short")
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
