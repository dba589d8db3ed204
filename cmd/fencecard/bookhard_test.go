package main

import (
	"bufio"
	"bytes"
	"context"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/shelf"
	"fencecard/setup/book"
)

const legPlan = `
title: Leg
unit: in
wood: white ash
pieces:
  - piece: leg
    size: {left-right: 1 5/8, front-back: 1 5/8, top-bottom: 17}
    cuts:
      - {mortise: rail, in: right, width: 3/8, setback: 1/2 from front, span: 1/2 to 3 from top, depth: 1}
`

// keepMany is a process that keeps a setup under one name after another, and
// says each name once it is kept: fencecard-keeps PLAN BOOK NAME COUNT.
func keepMany() {
	args := os.Args[1:]
	for i := range 1 << 30 {
		if fmt.Sprint(i) == args[3] {
			return
		}
		name := fmt.Sprintf("%s %d", args[2], i)
		code := run(context.Background(), []string{"book", "keep", args[0], "--setup", "1", "--name", name, "--book", args[1]},
			streams{os.Stdin, io.Discard, os.Stderr})
		if code != exitDone {
			os.Exit(code)
		}
		fmt.Println(name)
	}
}

// leg writes the plan and names a book beside it.
func leg(t *testing.T) (plan, file string) {
	t.Helper()
	folder := t.TempDir()
	plan = filepath.Join(folder, "leg.yaml")
	require.NoError(t, os.WriteFile(plan, []byte(legPlan), 0o666))
	return plan, filepath.Join(folder, "book.txt")
}

func wholeBook(t *testing.T, file string) *book.Book {
	t.Helper()
	data, err := os.ReadFile(file)
	require.NoError(t, err)
	b, err := book.Read(file, data)
	require.NoError(t, err)
	require.NoError(t, b.Damage().Err())
	return b
}

// Eight processes keep fifty setups each at once, and all are there.
func TestManyKeepAtOnce(t *testing.T) {
	t.Parallel()
	processes, each := 8, 50
	if testing.Short() {
		each = 5
	}
	plan, file := leg(t)
	var all sync.WaitGroup
	for p := range processes {
		all.Go(func() {
			out, err := exec.Command("fencecard-keeps", plan, file, fmt.Sprint("process ", p), fmt.Sprint(each)).CombinedOutput()
			assert.NoError(t, err, string(out))
		})
	}
	all.Wait()
	b := wholeBook(t, file)
	assert.Len(t, b.Entries(), processes*each)
	for p := range processes {
		for i := range each {
			_, err := b.NamedOrCoded(fmt.Sprintf("process %d %d", p, i))
			assert.NoError(t, err)
		}
	}
}

// A process is killed at random moments while it keeps one setup after another:
// the book is the one after the last keep that was done or the one after the
// next, and never a third.
func TestKilledWhileKeeping(t *testing.T) {
	kills := 200
	if testing.Short() {
		kills = 20
	}
	const shards = 4
	for shard := range shards {
		t.Run(fmt.Sprint(shard), func(t *testing.T) {
			t.Parallel()
			random := rand.New(rand.NewPCG(uint64(shard), 1))
			plan, file := leg(t)
			before := []byte{}
			for kill := range kills / shards {
				if kill%10 == 0 { // a short book again, lest the test read for long
					require.NoError(t, os.RemoveAll(file))
					before = []byte{}
				}
				confirmed := killedKeeping(t, plan, file, fmt.Sprint("kill ", kill), time.Duration(random.Int64N(int64(12*time.Millisecond))))
				before = oldOrNew(t, file, before, confirmed)
			}
			require.NoError(t, exec.Command("fencecard", "book", "keep", plan, "--setup", "1", "--name", "the last", "--book", file).Run())
			assert.Len(t, leftBeside(t, file), 3, "what the killed left is cleared: book, backup, lock")
		})
	}
}

// killedKeeping lets a process keep setups for a while after its first, kills
// it, and returns the names that it said are kept.
func killedKeeping(t *testing.T, plan, file, name string, after time.Duration) []string {
	t.Helper()
	cmd := exec.Command("fencecard-keeps", plan, file, name, "forever")
	pipe, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	out := bufio.NewReader(pipe)
	first, err := out.ReadString('\n')
	require.NoError(t, err)
	time.Sleep(after)
	require.NoError(t, cmd.Process.Kill())
	rest, err := io.ReadAll(out)
	require.NoError(t, err)
	cmd.Wait()
	return strings.Split(strings.TrimSpace(first+string(rest)), "\n")
}

// oldOrNew checks that the book holds what it held, the confirmed setups and
// perhaps one more, whole, and returns its text.
func oldOrNew(t *testing.T, file string, before []byte, confirmed []string) []byte {
	t.Helper()
	b := wholeBook(t, file)
	now := b.Bytes()
	require.True(t, bytes.HasPrefix(now, before), "nothing that was kept is changed")
	had, err := book.Read(file, before)
	require.NoError(t, err)
	more := b.Entries()[len(had.Entries()):]
	require.GreaterOrEqual(t, len(more), len(confirmed))
	require.LessOrEqual(t, len(more), len(confirmed)+1)
	for i, name := range confirmed {
		require.Equal(t, name, more[i].Name)
	}
	return now
}

// leftBeside lists the files of a book's folder whose names begin as its does.
func leftBeside(t *testing.T, file string) []string {
	t.Helper()
	visible, err := filepath.Glob(file + "*")
	require.NoError(t, err)
	hidden, err := filepath.Glob(filepath.Join(filepath.Dir(file), ".book*"))
	require.NoError(t, err)
	return append(visible, hidden...)
}

// The backup is the book before the last change.
func TestBackupIsTheLastVersion(t *testing.T) {
	plan, file := leg(t)
	var last []byte
	for i := range 3 {
		require.NoError(t, exec.Command("fencecard", "book", "keep", plan, "--setup", "1", "--name", fmt.Sprint(i), "--book", file).Run())
		backup, err := os.ReadFile(file + shelf.BackupEnding)
		if i > 0 {
			require.NoError(t, err)
			assert.Equal(t, last, backup)
		}
		last = wholeBook(t, file).Bytes()
	}
}
