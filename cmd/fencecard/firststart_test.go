package main

import (
	"bufio"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"fencecard/output/page/browser"
)

// Without a plan one begins one in the browser, and its screen opens.
func TestFirstStart(t *testing.T) {
	book, _ := aBook(t)
	folder := t.TempDir()
	s := serveIn(t, folder, book)
	b := browser.Open(t, 1280, 800)
	b.Go(s.address)
	b.Until(`document.querySelector('#sheet-head + a[href="/plan"]')`) // first of all
	b.Shot("first-bench")
	b.Go(s.address + "plan")
	b.Until(`document.querySelector('#begin button')`)
	b.Tap("#title")
	b.Press("Wall shelf" + browser.Enter)
	b.Until(typedInto)
	b.Until(`document.querySelector('#name').textContent === "wall-shelf.yaml"`)
	assert.NotContains(t, browser.Eval[string](b, "location.href"), s.address)
	b.Until(`document.querySelector('#form-side [data-new=piece]')?.textContent === "Add the first piece"`)
	assert.False(t, browser.Eval[bool](b, `document.querySelector('#faults li') !== null`), "nothing is wrong with a plan just begun")
	text, err := os.ReadFile(filepath.Join(folder, "wall-shelf.yaml"))
	require.NoError(t, err)
	assert.Equal(t, "title: Wall shelf\nunit: in\n", string(text))
	first := s.address + "plan"
	own := browser.Eval[string](b, "location.href")
	assert.Equal(t, first, browser.Eval[string](b, `document.querySelector('#begin').href`))

	// A first piece, typed and not saved, goes along to the table.
	b.Tap("#fold")
	browser.Eval[any](b, typedInto+`.focus()`)
	b.Press("pieces: [{piece: a, size: {left-right: 3, front-back: 6, top-bottom: 20}, cuts: [{groove: x, in: front, width: 1/4, depth: 1/4, setback: 1 from left}]}]" + browser.Enter)
	b.Until(`document.querySelector('#table').textContent === "Save and go to the table"`)
	b.Shot("first-unsaved")
	b.Tap("#table")
	b.Until(`document.querySelector('#sheet-head')?.textContent === "Wall shelf"`)
	b.Shot("first-table")
	assert.Equal(t, "/plan "+first, browser.Eval[string](b, `[...document.querySelectorAll("#sheet nav a[data-away]")].map((a) => a.getAttribute("href")).join(" ")`))
	b.Go(own)
	b.Until(typedInto + `.textContent.includes("piece: a")`)
	b.Tap("#begin")
	b.Until(`document.querySelector('button[data-plan]')?.textContent === "Wall shelf"`)
	b.Shot("first-again")
}

// Plans do not go among the files of the program.
func TestPlansFolder(t *testing.T) {
	folder := t.TempDir()
	t.Chdir(folder)
	where, _ := plansFolder()
	assert.Equal(t, filepath.Base(folder), filepath.Base(where))
	program, err := os.Executable()
	require.NoError(t, err)
	home := t.TempDir()
	t.Setenv("HOME", home)
	t.Setenv("USERPROFILE", home)
	t.Chdir(filepath.Dir(program))
	where, _ = plansFolder()
	assert.Equal(t, filepath.Join(home, "fencecard"), where)
	require.NoError(t, os.Mkdir(filepath.Join(home, "Documents"), 0o777))
	where, _ = plansFolder()
	assert.Equal(t, filepath.Join(home, "Documents", "fencecard"), where)
}

// serveIn starts the bench page in a folder.
func serveIn(t *testing.T, folder string, args ...string) *served {
	t.Helper()
	cmd := exec.Command("fencecard", append([]string{"bench", "--no-open"}, args...)...)
	cmd.Dir = folder
	return serveBy(t, cmd)
}

// Help is printed wherever somebody or something reads it.
func TestHelpUnlessPressed(t *testing.T) {
	null, err := os.OpenFile(os.DevNull, os.O_RDWR, 0)
	require.NoError(t, err)
	defer null.Close()
	file, err := os.Create(filepath.Join(t.TempDir(), "out"))
	require.NoError(t, err)
	defer file.Close()
	for name, s := range map[string]streams{
		"a pipe for output": {null, nil, null}, "a file for messages": {null, null, file}, "a file for input": {file, null, null},
	} {
		cmd := exec.Command("fencecard")
		cmd.Env = append(os.Environ(), "DISPLAY=:99", "HOME="+t.TempDir())
		var out strings.Builder
		cmd.Stdin, cmd.Stdout, cmd.Stderr = s.in, s.out, s.err
		if s.out == nil {
			cmd.Stdout = &out
		}
		require.NoError(t, cmd.Run(), name)
		if s.out == nil {
			assert.Contains(t, out.String(), "fencecard [flags]")
		}
	}
	cmd := exec.Command("fencecard")
	cmd.Env = append(os.Environ(), "DISPLAY=", "WAYLAND_DISPLAY=")
	require.NoError(t, cmd.Run(), "without a screen")
}

// firstLine reads the address that a page is served at.
func firstLine(t *testing.T, out *os.File) string {
	t.Helper()
	line, err := bufio.NewReader(out).ReadString('\n')
	require.NoError(t, err)
	return strings.TrimSpace(line)
}
