package main

import (
	"bufio"
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"runtime"
	"strings"
	"testing"

	"github.com/spf13/cobra"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/cmd/internal/session"
	"fencecard/joinery/examples"
)

// aside is what an example line says about itself, behind two blanks or more.
var aside = regexp.MustCompile(`\s{2,}\S.*$`)

// sampleCode stands in the help for the code of a kept setup.
const sampleCode = "7k3f-9m2q"

// sampleDeck stands there for the code of a deck.
const sampleDeck = "k7fw"

var deckLine = regexp.MustCompile(`(?m)^deck (\S+)$`)

// TestHelpExamples runs every example of every command's help in a folder that
// has the files it names. All are right usage; those that compare what was
// measured may find it wrong.
func TestHelpExamples(t *testing.T) {
	if runtime.GOOS == "windows" {
		t.Skip("the examples are for a Unix shell")
	}
	a := &app{Session: &session.Session{}}
	var visit func(c *cobra.Command)
	seen := 0
	visit = func(c *cobra.Command) {
		for line := range strings.Lines(strings.ReplaceAll(c.Example, "\\\n", "")) {
			command := aside.ReplaceAllString(strings.TrimSpace(line), "")
			seen++
			t.Run(command, func(t *testing.T) {
				t.Parallel()
				tryExample(t, c, command)
			})
		}
		for _, sub := range c.Commands() {
			visit(sub)
		}
	}
	visit(a.rootCommand(everything))
	assert.Greater(t, seen, 25)
}

func tryExample(t *testing.T, c *cobra.Command, command string) {
	folder := t.TempDir()
	sh := func(line string) (string, int) {
		var out bytes.Buffer
		cmd := exec.Command("sh", "-c", line)
		cmd.Dir, cmd.Stdout, cmd.Stderr = folder, &out, &out
		cmd.Env = append(os.Environ(), "FENCECARD_BOOK="+filepath.Join(folder, "book.txt"))
		if err := cmd.Run(); err != nil {
			require.ErrorAs(t, err, new(*exec.ExitError))
		}
		return out.String(), cmd.ProcessState.ExitCode()
	}
	if strings.Contains(command, "pieces.csv") {
		list, err := os.ReadFile("../../testdata/piecelists/wall-shelf.csv")
		require.NoError(t, err)
		require.NoError(t, os.WriteFile(filepath.Join(folder, "pieces.csv"), list, 0o644))
	}
	if !strings.HasPrefix(command, "fencecard new") || strings.Contains(command, "--against") {
		bench := strings.Replace(string(examples.BootBench), "\nunit:", "\nshop: shop.yaml\nunit:", 1)
		require.NoError(t, os.WriteFile(filepath.Join(folder, "bench.yaml"), []byte(bench), 0o644))
		require.NoError(t, os.WriteFile(filepath.Join(folder, "shop.yaml"), examples.StarterShop, 0o644))
	}
	if strings.Contains(command, "--deck deck.json") {
		sh("fencecard cards bench.yaml --format json --out deck.json")
	}
	if c.HasParent() && (c.Name() == "book" || c.Parent().Name() == "book") {
		out, code := sh(`fencecard book keep bench.yaml --setup 3 --name "seat rail mortises"`)
		require.Zero(t, code, out)
		list, _ := sh("fencecard book list --format json")
		var book struct{ Entries []struct{ Code string } }
		require.NoError(t, json.Unmarshal([]byte(list), &book), list)
		require.NotEmpty(t, book.Entries, list)
		command = strings.ReplaceAll(command, sampleCode, book.Entries[0].Code)
		if command == `fencecard book keep bench.yaml --setup 3 --name "seat rail mortises"` {
			return // done above
		}
	}
	if strings.Contains(command, sampleDeck) {
		said, _ := sh("fencecard check bench.yaml")
		found := deckLine.FindStringSubmatch(said)
		require.NotNil(t, found, said)
		command = strings.ReplaceAll(command, sampleDeck, found[1])
	}
	if c.Name() == "bench" {
		serveExample(t, folder, command)
		return
	}
	out, code := sh(command)
	measured := strings.HasPrefix(command, "fencecard check") && strings.Contains(command, "bench.yaml 3.")
	assert.True(t, code == exitDone || measured && code == exitFault, "exit code %d\n%s", code, out)
	assert.NotContains(t, out, "not deck")
}

// serveExample runs an example that serves until it is interrupted, on an address
// that every machine has.
func serveExample(t *testing.T, folder, command string) {
	if strings.Contains(command, "--share") && runtime.GOOS != "linux" {
		t.Skip("only Linux has a second loopback address from the start")
	}
	command = regexp.MustCompile(`--share(=\S+)?`).ReplaceAllString(command, "--share=127.0.0.2")
	command = regexp.MustCompile(`--port \d+`).ReplaceAllString(command, "--port 0")
	cmd := exec.Command("sh", "-c", "exec "+command+" --no-open")
	cmd.Dir, cmd.Env = folder, append(os.Environ(), "XDG_DATA_HOME="+folder, "FENCECARD_BOOK="+filepath.Join(folder, "book.txt"))
	var messages bytes.Buffer
	cmd.Stderr = &messages
	out, err := cmd.StdoutPipe()
	require.NoError(t, err)
	require.NoError(t, cmd.Start())
	first, err := bufio.NewReader(out).ReadString('\n')
	assert.NoError(t, err)
	assert.Regexp(t, `^http://127\.0\.0\.\d:\d+/\S*\n$`, first)
	require.NoError(t, cmd.Process.Signal(os.Interrupt))
	assert.NoError(t, cmd.Wait(), messages.String())
}
