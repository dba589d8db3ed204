package shelf

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// holdIn, in the environment of the test binary, makes it hold a lock forever.
const holdIn = "SHELF_HOLD_LOCK"

func TestMain(m *testing.M) {
	if path := os.Getenv(holdIn); path != "" {
		if _, err := hold(context.Background(), path); err != nil {
			fmt.Println(err)
			os.Exit(1)
		}
		fmt.Println("held")
		select {}
	}
	os.Exit(m.Run())
}

func adding(text string) func([]byte) ([]byte, error) {
	return func(old []byte) ([]byte, error) { return append(old, text...), nil }
}

func TestUpdateKeepsTheLastVersion(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "book")
	require.NoError(t, Update(t.Context(), path, adding("1")))
	holds(t, folder, map[string]string{"book": "1"})
	require.NoError(t, Update(t.Context(), path, adding("2")))
	holds(t, folder, map[string]string{"book": "12", "book.bak": "1"})
	require.NoError(t, Update(t.Context(), path, adding("3")))
	holds(t, folder, map[string]string{"book": "123", "book.bak": "12"})
	require.NoError(t, Update(t.Context(), path, adding("")), "the same bytes are not written")
	holds(t, folder, map[string]string{"book": "123", "book.bak": "12"})

	no := errors.New("no")
	assert.ErrorIs(t, Update(t.Context(), path, func([]byte) ([]byte, error) { return []byte("x"), no }), no)
	holds(t, folder, map[string]string{"book": "123", "book.bak": "12"})
}

func TestWhatACrashLeftIsCleared(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "book")
	require.NoError(t, os.WriteFile(tempName(path), []byte("half"), 0o666))
	require.NoError(t, os.WriteFile(tempName(path+BackupEnding), []byte("half"), 0o666))
	require.NoError(t, os.WriteFile(filepath.Join(folder, ".book.mine.tmp"), []byte("a maker's own"), 0o666))
	require.NoError(t, Update(t.Context(), path, adding("1")))
	holds(t, folder, map[string]string{"book": "1", ".book.mine.tmp": "a maker's own"})
}

// A maker saves the book in an editor while a run is changing it.
func TestAHandEditInBetweenIsKept(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "book")
	require.NoError(t, os.WriteFile(path, []byte("1"), 0o666))
	edits := 2
	require.NoError(t, Update(t.Context(), path, func(old []byte) ([]byte, error) {
		if edits--; edits >= 0 {
			require.NoError(t, os.WriteFile(path, append(old, "+edit"...), 0o666))
		}
		return append(old, "+run"...), nil
	}))
	holds(t, folder, map[string]string{"book": "1+edit+edit+run", "book.bak": "1+edit+edit"})
}

func TestAHandThatDoesNotRest(t *testing.T) {
	folder := t.TempDir()
	path := filepath.Join(folder, "book")
	edits := 0
	err := Update(t.Context(), path, func(old []byte) ([]byte, error) {
		edits++
		require.NoError(t, os.WriteFile(path, fmt.Append(nil, edits), 0o666))
		return []byte("run"), nil
	})
	assert.ErrorIs(t, err, ErrUnsettled)
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Equal(t, fmt.Sprint(mostTries), string(data))
	assert.Empty(t, temps(path))
}

func TestRunsTakeTurns(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book")
	var all sync.WaitGroup
	for i := range 20 {
		all.Go(func() { assert.NoError(t, Update(t.Context(), path, adding(fmt.Sprintln(i)))) })
	}
	all.Wait()
	data, err := os.ReadFile(path)
	require.NoError(t, err)
	assert.Len(t, strings.Fields(string(data)), 20)
}

// holder is another process that holds the lock of a file.
func holder(t *testing.T, path string) *exec.Cmd {
	t.Helper()
	cmd := exec.Command(os.Args[0])
	cmd.Env = append(os.Environ(), holdIn+"="+path+lockEnding)
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	t.Cleanup(func() { cmd.Process.Kill(); cmd.Wait() })
	line, err := bufio.NewReader(out).ReadString('\n')
	require.NoError(t, err)
	require.Equal(t, "held\n", line)
	return cmd
}

func TestALockThatIsHeld(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book")
	holder(t, path)
	impatient, cancel := context.WithTimeout(t.Context(), 50*time.Millisecond)
	defer cancel()
	err := Update(impatient, path, adding("1"))
	assert.ErrorIs(t, err, context.DeadlineExceeded)
	assert.NoFileExists(t, path)
}

// A run that was killed holds nothing, although its lock file is still there.
func TestALockThatWasLeftBehind(t *testing.T) {
	path := filepath.Join(t.TempDir(), "book")
	killed := holder(t, path)
	require.NoError(t, killed.Process.Kill())
	killed.Wait()
	require.FileExists(t, path+lockEnding)
	impatient, cancel := context.WithTimeout(t.Context(), time.Second)
	defer cancel()
	require.NoError(t, Update(impatient, path, adding("1")))
}
